import { answerOptions, type OptionsAnswer, type OptionsRequest } from './optionsAnswer.ts';

export type { OptionsAnswer, OptionsRequest } from './optionsAnswer.ts';

self.onmessage = ({ data }: MessageEvent<OptionsRequest>) => {
  answerOptions(data, (answer: OptionsAnswer) => self.postMessage(answer));
};
