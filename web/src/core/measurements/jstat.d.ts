// SPDX-License-Identifier: MIT
// The few distributions of the library jstat that this project calls; it ships no types of its own.
declare module 'jstat' {
  interface Distribution<P extends number[]> {
    pdf(x: number, ...parameters: P): number;
    cdf(x: number, ...parameters: P): number;
    inv(p: number, ...parameters: P): number;
  }
  const library: {
    readonly normal: Distribution<[mean: number, sd: number]>;
    readonly studentt: Distribution<[dof: number]>;
    readonly chisquare: Distribution<[dof: number]>;
    readonly beta: Distribution<[alpha: number, beta: number]>;
  };
  export default library;
}
