const types = new Set(['image/jpeg', 'image/png', 'image/heic', 'image/heif']);

/** What a crew's camera or its store may give, for a file control; some browsers know HEIC by its ending alone. */
export const acceptedPictures = [...types, '.heic', '.heif'].join(',');

/** The type of a picture that is kept; null for any other file. The office looks at the content again. */
export function pictureType({ type, name }: Pick<File, 'type' | 'name'>): string | null {
  if (types.has(type)) return type;
  return type === '' && /\.hei[cf]$/i.test(name) ? 'image/heic' : null;
}
