// A `.screed` file imported is its text: bundles and tests load it so.
declare module '*.screed' {
  const text: string;
  export default text;
}
