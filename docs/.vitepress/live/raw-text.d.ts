/** A file as its text: the bundler puts it in. */
declare module '*?raw' {
  const text: string;
  export default text;
}
