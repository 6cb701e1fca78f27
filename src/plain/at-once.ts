/** Does all the steps of some work one after the other, for whoever has nothing else to do meanwhile. */
export function atOnce<T>(steps: Iterator<unknown, T>): T {
    for (;;) {
        const { done, value } = steps.next();
        if (done) return value;
    }
}
