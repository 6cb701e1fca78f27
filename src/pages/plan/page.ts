import { drawPlan, svgInSteps, withNotice, type Sheet } from '../../drawing/index.ts';
import { dxfInSteps } from '../../exports/dxf/dxf.ts';
import { decimal, unitOf } from '../../report/csv.ts';
import { csvStanding, standingNotice } from '../../report/standing.ts';
import { inOne, type Steps } from '../../plain/steps.ts';
import type { Page, RoomOnPage } from '../page.ts';
import { html, trusted, type Html } from '../shared/html.ts';
import { fileName } from '../../text/file-name.ts';
import { printable } from '../shared/printable.ts';
import { Sources } from '../shared/sources.ts';
import { planInSteps, type PlanContent } from './content.ts';
import { findingsOnPlan } from './findings.ts';
import { severityWord } from './render.ts';
import { t } from '../shared/words.ts';
import type { CsvText, HtmlText } from '../../text/fit.ts';

const exports = {
    *svg(room: RoomOnPage) {
        const sheet = planSheet(room);
        yield;
        return { name: fileName('plan', room.layout.room.name, 'svg'), bytes: yield* svgInSteps(sheet, {}) };
    },
    *html(room: RoomOnPage) { return { name: fileName('plan', room.layout.room.name, 'html'), bytes: yield* printedPlan(room) }; },
    *dxf(room: RoomOnPage) {
        const sheet = planSheet(room);
        yield;
        return { name: fileName('plan', room.layout.room.name, 'dxf'), bytes: yield* dxfInSteps(sheet, room.layout.room.job.show.value) };
    },
    csv: inOne((room: RoomOnPage) => ({ name: fileName('plan', room.layout.room.name, 'csv'), bytes: partsAsCsv(room) })),
} satisfies Page['exports'];

export const planPage: Page<PlanContent> = {
    kind: 'plan',
    content: planInSteps, exports,
};

function planSheet({ ceiling, takeOff, standing }: RoomOnPage): Sheet {
    return withNotice(drawPlan(ceiling, takeOff), standingNotice(standing));
}

/** The sheet as it is drawn for paper, with what was found below it. */
function* printedPlan(room: RoomOnPage): Steps<HtmlText> {
    const { layout: { room: { name, title } }, standing } = room;
    const findings = findingsOnPlan(room, { pointsPerTick: 0, left: 0, top: 0 }, new Sources());
    const list: Html = findings.length === 0 ? html`<p>${t('Nothing found in this room.')}</p>`
        : html`<h2>${t('Found here')}</h2><ol>${findings.map(({ severity, message }) => html`<li><b>${severityWord(severity)}.</b> ${message}</li>`)}</ol>`;
    yield;
    const sheet = planSheet(room);
    yield;
    const svg = yield* svgInSteps(sheet, { as: 'part of a page' });
    return printable({
        title: t('Ceiling plan, {0}', title ?? name), landscape: true, notice: standingNotice(standing), style: '.drawing svg{width:100%;height:auto}',
        body: html`<div class="drawing">${trusted(svg)}</div><p class="soft">${t('On paper smaller than the sheet names, its scale no longer holds; the scale bar does.')}</p>${list}`,
    });
}

/** Every piece with its place in the room: its edges from the north-west corner. */
function partsAsCsv({ takeOff, ceiling, standing }: RoomOnPage): CsvText {
    const show = ceiling.room.job.show.value, unit = unitOf(show);
    const f = (ticks: number) => decimal(ticks, show);
    return csvStanding(
        ['piece', 'part', 'where', ...['west', 'east', 'north', 'south', 'length'].map(name => `${name} ${unit}`)],
        [{ standing, rows: takeOff.pieces.map(
            ({ id, part, where, box, cutBack }) => [id, part, where, f(box.west), f(box.east), f(box.north), f(box.south), f(cutBack)]
        ) }],
    );
}
