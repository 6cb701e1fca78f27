import { CURRENCIES } from '../../data/currencies.ts';
import type { JobSettings } from '../../job/model.ts';
import type { Part } from '../../job/part.ts';
import type { Status } from '../../job/status.ts';
import type { Given } from '../../provenance/source.ts';
import * as ast from '../generated/ast.ts';
import { isBroken } from '../types/broken.ts';
import { factsOf } from '../types/facts.ts';
import { sourceOf, sourceOfProperty } from '../types/place.ts';
import { readContract } from './contract.ts';
import type { Reading } from './reading.ts';
import { limitOf } from './recorded.ts';
import { readSeasons } from './seasons.ts';
import { listed } from '../../plain/words.ts';

/**
 * What holds for a whole house. A setting that is said and cannot be known falls back on its default: it is reported
 * where it stands, and everything else in the house still has to be shown somehow.
 */
export function readJob(reading: Reading, declaration: ast.Job | undefined): JobSettings {
    const show: JobSettings['show'] = reading.word('show') ?? standing(reading, r => r.word('show'))!;
    const usual = <T>(name: string, given: Given<T>): Given<T> => show.value === 'millimeters' ? inMillimeters(reading, name, given) : given;
    const title = declaration?.title !== undefined && !isBroken(declaration) ? { value: declaration.title, at: sourceOfProperty(declaration, 'title'), said: true } : undefined;
    const seasons = readSeasons(reading, show.value), money = checkCurrency(reading), contract = readContract(reading, money?.said ? money : undefined), cutFrom = reading.word<Status>('cut-from');
    return {
        title, client: reading.text('client'),
        currency: money ?? standing(reading, r => r.text('currency'))!,
        show,
        cutTo: usual('cut-to', reading.length('cut-to') ?? standing(reading, r => r.length('cut-to'))!),
        cutTolerance: reading.length('cut-tolerance'),
        kerf: usual('kerf', reading.length('kerf') ?? standing(reading, r => r.length('kerf'))!),
        endTrim: usual('end-trim', reading.length('end-trim') ?? standing(reading, r => r.length('end-trim'))!),
        miterStop: reading.length('miter-stop'), longestBoard: limitOf(reading, 'longest-board'), longestPiece: limitOf(reading, 'longest-piece'),
        shortestOffcut: usual('shortest-offcut', reading.length('shortest-offcut') ?? standing(reading, r => r.length('shortest-offcut'))!),
        offcutWorth: shareOf(reading),
        boards: reading.word('boards'), poolHidden: poolOf(reading),
        paintFilm: usual('paint-film', reading.range('paint-film') ?? standing(reading, r => r.range('paint-film'))!),
        ...seasons && { seasons }, ...contract && { contract }, ...cutFrom && { cutFrom },
        ...declaration && { at: sourceOf(declaration) },
    };
}

/** What holds unsaid in a job that shows millimeters: one length, or least and most. */
function inMillimeters<T>(reading: Reading, name: string, given: Given<T>): Given<T> {
    const [least, most] = given.said ? [] : factsOf(reading.block.declaration(name)!).inMillimeters ?? [];
    return least === undefined ? given : { ...given, value: (most === undefined ? least : { least, most }) as T };
}

/** The declared default, of a block that says nothing. */
function standing<T>(reading: Reading, read: (reading: Reading) => T): T {
    return read(reading.empty());
}

const HIDDEN = { cleats: 'cleat', spacers: 'spacer', blocking: 'blocking' } as const;

function poolOf(reading: Reading): JobSettings['poolHidden'] {
    const slack = reading.length('pool-hidden');
    if (!slack) return undefined;
    const said = reading.modValues('pool-hidden', 'of').flatMap(({ known: { value } }) => (value.is === 'word' ? [HIDDEN[value.word as keyof typeof HIDDEN]] : []));
    return { ...slack, value: { slack: slack.value, of: new Set<Part>(said.length > 0 ? said : ['cleat', 'spacer']) } };
}

/** What a kept offcut is worth, as a share of its price: all of it at most, or an offcut would be worth making. */
function shareOf(reading: Reading): JobSettings['offcutWorth'] {
    const worth = reading.amount('shortest-offcut', 'worth');
    if (!worth) return undefined;
    if (worth.value.exact.compare(1) <= 0) return { ...worth, value: worth.value.exact };
    reading.evaluator.raise({ rule: 'out-of-range', at: worth.at, message: 'A kept offcut is worth at most what it cost: 100%.' });
    return undefined;
}

function checkCurrency(reading: Reading): Given<string> | undefined {
    const currency = reading.text('currency');
    if (!currency || Object.hasOwn(CURRENCIES, currency.value)) return currency;
    reading.evaluator.raise({ rule: 'wrong-type', at: currency.at, message: `There is no currency "${currency.value}" here; prices can be in ${listed(Object.keys(CURRENCIES), 'or')}.` });
    return undefined;
}
