/** Names that one run has given, each once, also on a disk that does not tell capitals or ways to write an accent apart. */
export class FileNames {
    private readonly taken = new Set<string>();

    /** The first name that is free: of those that `wish` gives, counted from one, which must differ sooner or later. */
    free<Name extends string>(wish: (n: number) => Name): Name {
        for (let n = 1; ; n++) {
            const name = wish(n), key = name.normalize('NFKC').toUpperCase().toLowerCase();
            if (this.taken.has(key)) continue;
            this.taken.add(key);
            return name;
        }
    }
}
