declare module 'words:*' {
  const words: Readonly<Record<string, string>>;
  export default words;
}
