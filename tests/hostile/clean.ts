import Papa from 'papaparse';
import sax from 'sax';
import { expect } from 'vitest';
import { MARK } from './house.ts';

/** What no terminal is to see, but for ends of lines: control characters of both sets, what turns the reading round, half characters, what cannot be seen. */
const UNFIT = /[\p{Cs}\u0000-\u0009\u000b-\u001f\u007f-\u009f\u2028\u2029\u202a-\u202e\u2066-\u2069\u200b\u00ad\ufdd0\u{e0041}]/gu;
const unfit = (text: string): string[] => [...new Set(text.match(UNFIT) ?? [])].map(sign => sign.codePointAt(0)!.toString(16));

/** Fit for what reads it; `text`: for anything at all. Fonts that a page carries are left out. */
export function mustBeClean(format: string, text: string, what = format): void {
    if (format === 'pdf') return void expect(text.slice(0, 5)).toBe('%PDF-');
    if (format === 'glb') return mustBeClean('json', Buffer.from(text.slice(20, 20 + Buffer.from(text, 'latin1').readUInt32LE(12)), 'latin1').toString(), what);
    expect(unfit(text.replaceAll('\r\n', '\n')), what).toEqual([]);
    if (['human', 'concise', 'github'].includes(format)) for (const line of text.split('\n')) expect(line.trim().startsWith(MARK), `${what}: ${line}`).toBe(false);
    switch (format) {
        case 'json': case 'sarif': JSON.parse(text); break;
        case 'github': for (const line of text.trimEnd().split('\n')) expect(line).toMatch(/^::(error|warning|notice) /); break;
        case 'csv': {
            const { data, errors } = Papa.parse<string[]>(text, { skipEmptyLines: true });
            expect(errors).toEqual([]);
            expect(new Set(data.map(row => row.length)).size).toBe(1);
            for (const cell of data.flat()) if (Number.isNaN(Number(cell))) expect(cell).not.toMatch(/^\s*[=+\-@]/);
            break;
        }
        case 'svg': mustBeXml(text); break;
        case 'html': {
            const page = text.replaceAll(/<style>[\s\S]*?<\/style>/g, '');
            expect(page, what).not.toMatch(/<script|<img|onerror=(?![^<>]*&gt;)/);
            for (const drawing of page.match(/<svg[\s\S]*?<\/svg>/g) ?? []) mustBeXml(drawing);
            break;
        }
        case 'ifc': expect(text).toMatch(/^[\x20-\x7e\n]*$/); break;
        case 'dxf': expect(text.trimEnd().split(/\r?\n/).length % 2, what).toBe(0); break;
    }
}

function mustBeXml(text: string): void {
    const parser = sax.parser(true);
    parser.onerror = error => { throw error; };
    parser.onopentag = ({ name }) => { expect(name).not.toBe('script'); };
    parser.write(text).close();
}

