/** The one function of jstat that the project uses; the package ships no types. */
declare module 'jstat' {
  const jStat: { hypgeom: { pdf(x: number, all: number, white: number, drawn: number): number } };
  export default jStat;
}
