/**
 * How much has been computed, in steps that take about the same time (roughly 5 million a second). Budgets are counted in
 * steps and never in time, so that the same job gives the same plan on every machine.
 */
export class Effort {
    spent = 0;

    constructor(readonly limit: number) {}

    get left(): number {
        return Math.max(0, this.limit - this.spent);
    }

    get isSpent(): boolean {
        return this.spent >= this.limit;
    }
}
