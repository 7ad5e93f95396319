/** Vite gives the address of a file that is put beside the build. */
declare module '*?url' {
  const address: string;
  export default address;
}
