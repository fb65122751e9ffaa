/** The part of a web worker that is used here. */
type Port = Pick<Worker, 'postMessage' | 'terminate' | 'onmessage'>;

/** Asks a worker one thing at a time. While it works only the newest question waits: a hand that moves asks faster than it is answered. */
export class Newest<Question, Answer> {
  private readonly port: Port;
  private busy = false;
  private next: Question | null = null;

  /** @param after what is asked next when nothing waits; null for nothing */
  constructor(port: Port, tell: (answer: Answer) => void, after: (answer: Answer) => Question | null = () => null) {
    this.port = port;
    port.onmessage = ({ data }: MessageEvent<Answer>) => {
      const next = this.next ?? after(data);
      this.next = null;
      this.busy = next !== null;
      if (next !== null) port.postMessage(next);
      tell(data);
    };
  }

  ask(question: Question): void {
    if (this.busy) this.next = question;
    else {
      this.busy = true;
      this.port.postMessage(question);
    }
  }

  end(): void {
    this.port.terminate();
  }
}
