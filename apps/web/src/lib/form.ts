/** The text of the fields of a form, by name; a missing one is an empty text. */
export function fieldsOf(form: HTMLFormElement): (name: string) => string {
  const data = new FormData(form);
  return (name) => {
    const value = data.get(name);
    return typeof value === 'string' ? value.trim() : '';
  };
}
