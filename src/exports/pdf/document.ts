import type PDFDocument from 'pdfkit';
import { firstFont, useLetters } from './letters.ts';

type Doc = InstanceType<typeof PDFDocument>;
/**
 * The library wants a time to tell files apart by; the program looks at no clock. What is not enumerable is not written, so the
 * file itself tells none.
 */
const NO_TIME = { getTime: () => 0, toISOString: () => '1970-01-01T00:00:00.000Z' };

/** A document in the drawings' letters, letter paper; with its first page, unless whoever wants it has pages of other paper. */
export function newDocument(Document: typeof PDFDocument, title: string, author: string | undefined, withPage = true): Doc {
    const doc = new Document({
        // 1.3 has no second description of the file, which the library writes without escaping what it is told
        size: 'LETTER', margins: { top: 60, bottom: 60, left: 62, right: 62 }, lang: 'en', displayTitle: true, pdfVersion: '1.3',
        font: firstFont(), autoFirstPage: withPage,
        info: { Title: title, ...author !== undefined && { Author: author }, CreationDate: NO_TIME as never },
    });
    Object.defineProperty(doc.info, 'CreationDate', { value: NO_TIME, enumerable: false });
    useLetters(doc);
    return doc;
}

/** Ends the document and hands over its bytes. */
export function documentBytes(doc: Doc): Promise<Uint8Array> {
    return new Promise((resolve, reject) => {
        const chunks: Uint8Array[] = [];
        doc.on('data', (chunk: Uint8Array) => chunks.push(chunk));
        doc.on('error', reject);
        doc.on('end', () => {
            const bytes = new Uint8Array(chunks.reduce((sum, { length }) => sum + length, 0));
            let at = 0;
            for (const chunk of chunks) { bytes.set(chunk, at); at += chunk.length; }
            resolve(bytes);
        });
        doc.end();
    });
}
