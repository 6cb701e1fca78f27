export function median(values: readonly number[]): number { return at(values, 0.5); }
export function p95(values: readonly number[]): number { return at(values, 0.95); }

function at(values: readonly number[], share: number): number {
    const sorted = [...values].sort((a, b) => a - b);
    return sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))]!;
}
