import { tapeOf } from '../../job/tape.ts';
import { sheet, text, type Sheet } from '../../drawing/display-list.ts';
import { allSectionsOf, drawAnySection, drawMeetings, meetingSheets, sectionsOf, toSvg, withNotice, type AnySection } from '../../drawing/index.ts';
import { paneGround } from '../../drawing/paper.ts';
import { toDxf } from '../../exports/dxf/dxf.ts';
import { decimal, unitOf } from '../../report/csv.ts';
import { csvStanding, standingNotice } from '../../report/standing.ts';
import { whyText } from '../../provenance/why-text.ts';
import { inOne } from '../../plain/steps.ts';
import { worstCase } from '../../quantity/tolerance.ts';
import type { Derived } from '../../ceiling/model.ts';
import type { Page, RoomOnPage } from '../page.ts';
import { html, trusted, type Html } from '../shared/html.ts';
import { fileName } from '../../text/file-name.ts';
import { printable } from '../shared/printable.ts';
import { t } from '../shared/words.ts';
import { keyOf, sectionInSteps, type SectionContent } from './content.ts';
import { SECTION_STYLE } from './style.ts';
import { runCases } from './runs.ts';
import { fitCase, spacerCase, type ToleranceCase } from './tolerances.ts';
import type { CsvText, HtmlText } from '../../text/fit.ts';

export const sectionPage: Page<SectionContent> = {
    kind: 'section',
    content: sectionInSteps,
    exports: {
        svg: inOne((room, state) => ({ name: fileName('section', room.layout.room.name, 'svg'), bytes: toSvg(noticed(room, sheetOf(room, chosen(room, state)))) })),
        dxf: inOne((room, state) => ({ name: fileName('section', room.layout.room.name, 'dxf'), bytes: toDxf(noticed(room, sheetOf(room, chosen(room, state))), room.layout.room.job.show.value) })),
        html: inOne(room => ({ name: fileName('sections', room.layout.room.name, 'html'), bytes: printedSections(room) })),
        csv: inOne(room => ({ name: fileName('sections', room.layout.room.name, 'csv'), bytes: lengthsAsCsv(room) })),
    },
};

/** The section that the pane shows; the first where its state says none of this room's. */
function chosen({ ceiling }: RoomOnPage, state: unknown): AnySection | undefined {
    const all = allSectionsOf(ceiling), wanted = (state as { section?: unknown } | null | undefined)?.section;
    return all.find(each => keyOf(each) === wanted) ?? all[0];
}

function sheetOf({ ceiling }: RoomOnPage, each: AnySection | undefined, nth = 0): Sheet {
    if (!each) return sheet({ id: 'C-2', title: t('No beam runs through this room.'), description: '' }, paneGround(400, 60), [text([200, 34], t('No beam runs through this room.'), { size: 11, anchor: 'middle' })]);
    return drawAnySection(ceiling, each, { sheet: `C-${2 + nth}`, of: '' });
}

function noticed({ standing }: RoomOnPage, drawn: Sheet): Sheet {
    return withNotice(drawn, standingNotice(standing));
}

/** Every section as its sheet, with what comes of its tolerances, under the first one the runs of the room; then the ways beams meet. */
function printedSections(room: RoomOnPage): HtmlText {
    const { ceiling, layout: { room: { name, title, job } } } = room, sections = allSectionsOf(ceiling);
    // on paper what comes of the tolerances is a line each: their figures are for the screen, where they follow the text
    const verdicts = (cases: readonly ToleranceCase[]): Html | '' => cases.length === 0 ? '' : html`<ul class="verdicts">${cases.map(({ figure, verdict }) => html`<li><b>${figure.title}.</b> ${verdict}</li>`)}</ul>`;
    const runs = runCases(ceiling).map(({ strip, cases }) => cases.length === 0 ? '' : html`<section class="run"><h2>${strip.title}</h2>${verdicts(cases)}</section>`);
    const body = html`${sections.map((each, i) => html`<section class="sheet"><div class="drawing">${trusted(toSvg(sheetOf(room, each, i), { as: 'part of a page' }))}</div>
${each.of === 'lines' ? verdicts([fitCase(each.lines.section, job), spacerCase(each.lines.section, job)].flatMap(one => one ?? [])) : ''}${i === 0 ? html`<div class="runs">${runs}</div>` : ''}</section>`)}
${drawMeetings(ceiling, room.takeOff, Array.from({ length: meetingSheets(ceiling) }, (_, i) => ({ sheet: `C-${2 + sections.length + i}`, of: '' }))).map(drawn => html`<section class="sheet"><div class="drawing">${trusted(toSvg(drawn, { as: 'part of a page' }))}</div></section>`)}`;
    return printable({ title: t('Beam sections, {0}', title ?? name), landscape: true, notice: standingNotice(room.standing), style: SECTION_STYLE, body });
}

/** Lengths that follow from the parts of each section, with what they may be off. */
function lengthsAsCsv({ ceiling, standing }: RoomOnPage): CsvText {
    const show = ceiling.room.job.show.value, unit = unitOf(show);
    const rows = sectionsOf(ceiling).flatMap(({ section, lines }) => {
        const { innerWidth, outerWidth, depth, bottomTop, cleatTop, spacerRoom, fit } = section;
        const lengths: Readonly<Record<string, Derived | undefined>> = { 'inner width': innerWidth, 'outer width': outerWidth, depth, 'bottom top': bottomTop, 'cleat top': cleatTop, 'spacer room': spacerRoom, 'bottom play': fit };
        return Object.entries(lengths).flatMap(([name, length]) => length ? [[section.profile.label, lines.map(line => line.name).join(' '), name, decimal(length.ticks, show), decimal(worstCase(length.tolerance), show), whyText(length.why, length.ticks, tapeOf(ceiling.room.job))]] : []);
    });
    return csvStanding(['section', 'lines', 'length', unit, `off ${unit}`, 'why'], [{ rows, standing }]);
}
