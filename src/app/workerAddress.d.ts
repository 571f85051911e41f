/** The address of the worker's script: vite.config.ts makes it. */
declare module 'virtual:worker' {
  const address: string;
  export default address;
}
