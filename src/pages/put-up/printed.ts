import { drawStepsPlan, drawViewInSteps, pictureSvgInSteps, sheetRules, stepPictures, THEMES, type StepPictures } from '../../drawing/index.ts';
import { puttingUpOf } from '../../putup/put-up.ts';
import { dryFitOf } from '../../pipeline/inspect-closely.ts';
import { counted } from '../../plain/words.ts';
import type { RoomPutUp } from '../../report/put-up/content.ts';
import { putUpLeaf } from '../../report/put-up/leaf.ts';
import type { HtmlText } from '../../text/fit.ts';
import { eachInSteps, type Steps } from '../../plain/steps.ts';
import { houseOf } from '../leaves/pages.ts';
import { printedLeaf } from '../leaves/printed.ts';
import type { RoomOnPage } from '../page.ts';
import { html, trusted, type Html } from '../shared/html.ts';
import { t } from '../shared/words.ts';
import { putUpContent, putUpOnPage, type DayOnPage, type StepOnPage } from './content.ts';
import { STEPS_PLAN_STYLE } from './style.ts';

/** Points of a picture: several stand beside each other. */
const PICTURE = { width: 210, height: 190, letters: 9 };

/** As the command line tells it, with a picture of every step, and a strip of the ceiling from below as it grows. */
export function* printedPutUp(room: RoomOnPage): Steps<HtmlText> {
    yield* puttingUpOf(room.ceiling);
    yield;
    const told = putUpOnPage(room.ceiling);
    yield;
    const body = told.steps.length === 0 ? undefined : html`${yield* strip(room, told)}${yield* pictures(room, told)}`;
    yield;
    return printedLeaf(putUpLeaf(houseOf(room), () => told), body && { body, style: STYLE });
}

function* pictures(room: RoomOnPage, told: RoomPutUp): Steps<Html> {
    const { ceiling, takeOff } = room, { days } = putUpContent(room, {});
    yield;
    const steps = told.steps.map(({ step: { number, placings } }) => ({ number, pieces: placings.map(({ piece }) => piece.id) }));
    const { parts, pictureOf } = stepPictures(drawStepsPlan(ceiling, takeOff, steps, PICTURE));
    yield;
    return html`${trusted(parts)}
<section class="pictures"><h2>${t('Step by step')}</h2>
<p class="legend"><i class="key up"></i> ${t('is up')} <i class="key now"></i> ${t('goes up now')} <i class="key later"></i> ${t('not yet')}</p>
${yield* eachInSteps(days, 1, day => dayMarkup(day, pictureOf))}</section>
`;
}

/** Each caution of a day where it is met first. */
function dayMarkup({ day, steps }: DayOnPage, pictureOf: StepPictures['pictureOf']): Html {
    const told = new Set<string>();
    const once = (step: StepOnPage): StepOnPage => {
        const cautions = step.cautions.filter(words => !told.has(words));
        for (const words of cautions) told.add(words);
        return { ...step, cautions };
    };
    return html`<h3>${day === null ? t('In this order') : t('Day {0}', day)}</h3>
<div class="row">${steps.map(step => figure(once(step), pictureOf))}</div>
`;
}

function figure(step: StepOnPage, pictureOf: StepPictures['pictureOf']): Html {
    const { number, what, pieces, people, crew, days, after, hours, fasteners, closing, cautions, gate } = step;
    const facts = [
        counted(pieces.length, 'piece'), people > 1 ? t('{0} people', people) : '', after && t('after {0}', after), hours, days && t('days {0}', days),
        crew === null ? '' : t('crew {0}', crew),
    ].filter(Boolean).join(', ');
    return html`<figure>${trusted(pictureOf(number, `${number}. ${what}`))}<figcaption><b>${number}. ${what}</b><br>${facts}${fasteners.length > 0 && html`<br><span class="soft">${fasteners.join('; ')}</span>`}
${closing.map(({ names }) => html`<br>${t('Closing: {0}.', names)}`)}${gate && html`<br><strong>${t('Then stop: measure coffer {0} before anything else is cut.', gate.coffer)}</strong>`}
${cautions.map(words => html`<br><span class="care">${words}</span>`)}</figcaption></figure>
`;
}

/** The ceiling from below at the end of each kind of step. */
function* strip({ ceiling }: RoomOnPage, { steps }: RoomPutUp): Steps<Html> {
    const { solids } = dryFitOf(ceiling), ends = steps.filter(({ step }, i) => steps[i + 1]?.step.kind !== step.kind);
    // kinds that take turns many times make no strip
    const shown = ends.length <= MOST_IN_STRIP ? ends : ends.filter(({ step }, i) => !ends.slice(i + 1).some(later => later.step.kind === step.kind));
    const up = new Set<string>();
    let done = 0;
    const figures: Html[] = [];
    for (const { step } of shown) {
        for (; done < step.number; done++) for (const { piece } of steps[done]!.step.placings) up.add(piece.id);
        const words = t('After step {0}: {1}', step.number, step.kind === 'first-bay' ? t('the first bay') : KINDS[step.kind]());
        const picture = yield* drawViewInSteps(ceiling, solids.filter(({ piece }) => up.has(piece.id)));
        yield;
        const svg = yield* pictureSvgInSteps(picture, { as: 'part of a page', theme: 'print', name: `view-${step.number}` });
        figures.push(html`<figure>${trusted(svg)}<figcaption>${words}</figcaption></figure>
`);
        yield;
    }
    return html`<section class="strip"><h2>${t('From below, as it grows')}</h2>
<div class="row">${figures}</div></section>
`;
}
const MOST_IN_STRIP = 12;

const KINDS: Readonly<Record<Exclude<RoomPutUp['steps'][number]['step']['kind'], 'first-bay'>, () => string>> = {
    panel: () => t('panels'), blocking: () => t('blocking'), spacers: () => t('spacers'), sides: () => t('sides and cleats'), bottoms: () => t('bottoms'),
    moldings: () => t('moldings'), band: () => t('the band'), trim: () => t('ceiling trim'),
};

const STYLE = `${sheetRules(tone => THEMES.print[tone]).join('\n')}
.parts{position:absolute}
.pictures,.strip{--up:#e2e2e2;--now:#4d4d4d;--soft:#777}
.row{font-size:0}
.row figure{display:inline-block;vertical-align:top;width:25%;margin:0 0 10px;padding-inline-end:10px;font-size:9.5pt;line-height:1.25;break-inside:avoid}
figure svg{display:block;width:100%;height:auto;margin-bottom:3px}
.pictures figure svg{max-height:48mm}
figcaption .care{color:#444;font-style:italic}
figcaption .soft{color:#444}
${STEPS_PLAN_STYLE.replaceAll(/^\.(\w+) path/gm, '.pictures svg .$1')}
.legend{font-size:10pt;break-after:avoid}
.key{display:inline-block;width:20px;height:10px;border:1px solid #000;margin-inline-start:12px;vertical-align:middle}
.key.up{background:var(--up)}
.key.now{background:var(--now);border-width:2px}
.key.later{border:1px dotted #777}
@media print{.key,.row figure{print-color-adjust:exact}}
h3{margin:.8em 0 .3em}`;
