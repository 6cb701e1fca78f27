/** Lets whatever has come meanwhile be answered: only a timer lets messages in on Node and in a browser alike. */
export function breath(): Promise<void> {
    return new Promise(resolve => { setTimeout(resolve, 0); });
}
