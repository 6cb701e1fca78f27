import type { Comparison } from '../../estimate/compare.ts';
import type { Estimate, LaborBasis } from '../../estimate/model.ts';
import type { JobSettings } from '../../job/model.ts';
import { stockNames } from '../../job/stock-names.ts';
import type { Rational } from '../../quantity/rational.ts';
import { lengthJson, moneyJson } from '../amounts-json.ts';
import type { Files } from '../look.ts';
import { sourceJson } from '../place-json.ts';
import { printJson } from '../../text/json.ts';
import { standingOfRooms } from '../standing.ts';
import { standingJson, toldJson } from '../standing-json.ts';
import { jobJson } from '../house-json.ts';
import type { HousePrice } from './house.ts';
import type { EstimateJson, EstimatesJson, NumberJson } from './shape.ts';
import { basisText, shareText } from './words.ts';
import type { JsonText } from '../../text/fit.ts';

/** An estimate and its alternates. */
export function jsonEstimate(prices: readonly HousePrice[], files: Files): JsonText {
    return printJson<EstimatesJson>({
        version: 1,
        kind: 'cofferwright.estimate',
        standing: standingJson(standingOfRooms(prices.flatMap(({ house }) => house.rooms))),
        houses: prices.map(({ house: { job }, priced, alternates, after }) => ({
            job: jobJson(job),
            leftOut: priced.left,
            estimate: estimateJson(priced.estimate, job, files),
            after: after ? {
                ...after, bought: after.bought.map(moneyJson), toBuy: after.toBuy.map(moneyJson), together: after.together.map(moneyJson),
                planned: after.planned.map(moneyJson),
            } : null,
            alternates: alternates.map(({ alternate, priced: other, comparison, told }) => ({
                name: alternate.name, title: alternate.title ?? null, source: sourceJson(alternate.at, files), errors: told.filter(({ severity }) => severity === 'error').length, leftOut: other.left,
                findings: told.map(one => ({ severity: one.severity, ...toldJson(one) })),
                changes: changesJson(comparison, other.estimate.currency, job),
                estimate: estimateJson(other.estimate, job, files),
            })),
        })),
    });
}

function estimateJson(estimate: Estimate, job: JobSettings, files: Files): EstimateJson {
    const { currency, sums } = estimate, show = job.show.value, nameOf = stockNames(estimate.materials.map(({ stock }) => stock));
    const money = (amount: Rational) => moneyJson({ amount, currency });
    return {
        currency, rooms: estimate.rooms, complete: estimate.missing.length === 0,
        materials: estimate.materials.map(line => ({
            stock: nameOf(line.stock), length: lengthJson(line.length, line.length, show),
            ...line.width !== undefined && { width: lengthJson(line.width, line.width, show) }, count: line.count, spare: line.spare,
            each: money(line.each), onHand: line.onHand, amount: money(line.amount),
        })),
        supplies: estimate.supplies.map(line => (
            { what: line.what, count: line.count, unit: line.unit, each: money(line.each), amount: money(line.amount), source: sourceJson(line.at, files) }
        )),
        labor: estimate.labor.map(line => ({
            phase: line.phase, room: line.room ?? null, what: line.what, why: basisText(line.basis, show), basis: basisJson(line.basis),
            minutes: exactJson(line.minutes), amount: line.amount ? money(line.amount) : null, source: sourceJson(line.at, files),
        })),
        additions: estimate.additions.map(line => (
            { kind: line.kind, what: line.what, why: shareText(line, estimate) || null, amount: money(line.amount), source: sourceJson(line.at, files) }
        )),
        sums: Object.fromEntries(Object.entries(sums).map(([name, amount]) => [name, money(amount)])) as EstimateJson['sums'],     // the same names
        minutes: exactJson(estimate.minutes), crew: estimate.crew ?? null, days: estimate.days ? exactJson(estimate.days) : null,
        missing: estimate.missing.map(({ rate, of, room, at }) => ({ rate, of, room: room ?? null, source: at ? sourceJson(at, files) : null })),
    };
}

/** `value` to read, `exact` as a fraction. */
function exactJson(value: Rational): NumberJson {
    return { value: Number(value.valueOf().toFixed(6)), exact: value.toFraction() };
}

function basisJson(basis: LaborBasis): EstimateJson['labor'][number]['basis'] {
    switch (basis.by) {
        case 'length': return { by: basis.by, ticks: basis.ticks, perTick: basis.perTick.toFraction() };
        case 'count': return { by: basis.by, count: basis.count, unit: basis.unit, each: basis.each.toFraction() };
        case 'share': return { by: basis.by, share: basis.share.toFraction(), minutes: basis.minutes.toFraction(), of: basis.ofWhat };
    }
}

function changesJson({ total, minutes, days, boards, pieces }: Comparison, currency: string, { show }: JobSettings): EstimatesJson['houses'][number]['alternates'][number]['changes'] {
    return {
        total: { before: moneyJson({ amount: total.before, currency }), after: moneyJson({ amount: total.after, currency }) },
        minutes: { before: exactJson(minutes.before), after: exactJson(minutes.after) },
        days: days ? { before: exactJson(days.before), after: exactJson(days.after) } : null,
        boards: boards.map(({ stock, length, before, after }) => ({ stock, length: lengthJson(length, length, show.value), before, after })),
        pieces: pieces.map(({ part, before, after, feet }) => ({
            part, before, after, length: { before: lengthJson(feet.before, feet.before, show.value), after: lengthJson(feet.after, feet.after, show.value) },
        })),
    };
}
