/** Advance of each character from space to tilde in hundredths of the size, measured on Atkinson Hyperlegible Next; figures as tabular ones. */
const advances = [
  28, 29, 30, 65, 59, 92, 73, 16, 30, 30, 48, 61, 21, 36, 21, 39, 64, 64, 64, 64, 64, 64, 64, 64, 64, 64, 21, 21, 55, 63, 55, 48,
  78, 63, 61, 64, 67, 57, 55, 69, 69, 39, 51, 63, 54, 82, 69, 71, 59, 72, 61, 59, 56, 69, 59, 86, 62, 57, 61, 32, 39, 34, 55, 37,
  24, 52, 57, 48, 56, 54, 31, 56, 55, 25, 24, 49, 26, 84, 55, 55, 57, 57, 35, 47, 33, 54, 46, 68, 48, 45, 46, 34, 24, 34, 55,
];

/** Width of a text [px]; an accent takes no room, and a character that is not in the table takes a wide one. */
export function textWidth(text: string, size: number): number {
  let sum = 0;
  for (const letter of text.replaceAll('\u00a0', ' ').normalize('NFD')) {
    const code = letter.codePointAt(0) ?? 0;
    if (code >= 0x300 && code < 0x370) continue;
    sum += advances[code - 32] ?? 60;
  }
  return (sum / 100) * size;
}

/** The text in lines no wider than `width`, broken between words. */
export function wrapped(text: string, size: number, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && textWidth(longer, size) > width) {
      lines.push(line);
      line = word;
    } else line = longer;
  }
  return [...lines, line];
}
