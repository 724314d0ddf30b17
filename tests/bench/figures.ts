// Figures made from many times: the middle one, the one that only five in a hundred exceed, the longest.

export interface Figures {
  readonly p50: number;
  readonly p95: number;
  readonly max: number;
  readonly count: number;
}

/** Times in milliseconds, rounded to a hundredth. */
export function figures(times: readonly number[]): Figures {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number) =>
    hundredths(sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN);
  return { p50: at(0.5), p95: at(0.95), max: at(1), count: times.length };
}

export function hundredths(value: number): number {
  return Math.round(value * 100) / 100;
}
