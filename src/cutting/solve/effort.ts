/**
 * How much has been computed, in steps that take about the same time, whatever is done: eight million are about a second of the processor, from six
 * to twelve. Budgets are counted in steps and never in time, so that the same job gives the same plan on every machine.
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

/**
 * What work takes, in steps: measured part by part, over jobs of all kinds that the benchmark makes, so that of two searches that take a twentieth of a
 * second or more none makes twice as many steps in that time as another. Whoever does it counts how often;
 * what is not told here is done a few times in a search, or as quickly as what is told beside it.
 */
export const STEPS = {
    /** A linear program that is set up, solved, its columns, one that is new, and a pivot, by itself and by what the program is large. */
    program: 2500, solution: 850, column: 2.5, newColumn: 12, pivot: 75, pivotEach: 0.12, limited: 400,
    /** A pass over what pieces and boards are worth, beside that of each piece. */
    pass: 200,
    /** A cell of a table, and of one whose contents can be told. */
    cell: 1 / 145, tracedCell: 1 / 70,
    /** A search for the content of a board, each piece that is sorted for it, and each node. */
    asked: 1.5, sorted: 0.45, node: 0.5,
    /** The worth of a section of one length, by each way to rip it. */
    placed: 1 / 20,
    /** A place that pieces behind each other may end at. */
    reached: 1 / 50,
    /** A way to cut that is looked at, one that is told apart from others, and one that is put together: its strips and pieces are read and written. */
    look: 2, cut: 16, made: 80,
} as const;
