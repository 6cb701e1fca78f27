import type { IfcText } from '../../text/fit.ts';

/**
 * The clear text of a STEP file (ISO 10303-21): instances are numbered as they are first used, and one that is said again
 * in the same words keeps its number.
 */
export class StepText {
    private readonly lines: string[] = [];
    private readonly numbers = new Map<string, string>();

    /** The reference (`#12`) to an instance. */
    add(instance: string): string {
        let reference = this.numbers.get(instance);
        if (reference === undefined) {
            this.numbers.set(instance, reference = `#${this.lines.length + 1}`);
            this.lines.push(`${reference}=${instance};`);
        }
        return reference;
    }

    /** The whole file. `descriptions`, `name`, `schema`: as the header's records of the same names have them. */
    file({ descriptions, name, stamp, schema, by }: { descriptions: readonly string[]; name: string; stamp: string; schema: string; by: string }): IfcText {
        return [
            'ISO-10303-21;', 'HEADER;',
            `FILE_DESCRIPTION((${descriptions.map(text).join(',')}),'2;1');`,
            `FILE_NAME(${text(name)},${text(stamp)},(''),(''),${text(by)},${text(by)},'');`,
            `FILE_SCHEMA((${text(schema)}));`,
            'ENDSEC;', 'DATA;', ...this.lines, 'ENDSEC;', 'END-ISO-10303-21;', '',
        ].join('\n') as IfcText;
    }
}

/** A real number always has its point. To a billionth: a tick is a 16256th of an inch. */
export function real(value: number): string {
    const digits = value.toFixed(9).replace(/0+$/, '');
    return digits === '-0.' ? '0.' : digits;
}

/** Text in quotes: apostrophes and backslashes doubled, all that is not plain ASCII by its code (ISO 10303-21, 6.4.3). */
export function text(words: string): string {
    const coded = words.replace(/['\\]/g, '$&$&').replace(/[^\x20-\x7e]/gu, letter => {
        const code = letter.codePointAt(0)!.toString(16).toUpperCase();
        return code.length > 4 ? `\\X4\\${code.padStart(8, '0')}\\X0\\` : `\\X2\\${code.padStart(4, '0')}\\X0\\`;
    });
    return `'${coded}'`;
}

export function textOrNone(words: string | undefined): string {
    return words === undefined ? '$' : text(words);
}
