export interface FieldsProps<T> {
  readonly value: T;
  readonly onChange: (value: T) => void;
  /** The sentence at a field that the office refused. */
  readonly error: (field: string) => string | undefined;
}
