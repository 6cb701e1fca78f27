import { drawViewInSteps, pictureSvgInSteps, type Picture } from '../../drawing/index.ts';
import { pieceTitle } from '../../drawing/plan/pieces.ts';
import { glbInSteps } from '../../exports/gltf/gltf.ts';
import { ifcInSteps } from '../../exports/ifc/ifc.ts';
import { standingNotice } from '../../report/standing.ts';
import { PARTS } from '../../takeoff/model.ts';
import { dryFitOf } from '../../pipeline/inspect-closely.ts';
import type { Steps } from '../../plain/steps.ts';
import type { Page, RoomOnPage } from '../page.ts';
import { html, trusted } from '../shared/html.ts';
import { fileName, type FileName } from '../../text/file-name.ts';
import { printable } from '../shared/printable.ts';
import { t } from '../shared/words.ts';
import { viewInSteps, type ViewContent } from './content.ts';
import { partNames } from './render.ts';
import type { HtmlText } from '../../text/fit.ts';

const exports = {
    *html(room: RoomOnPage) { return { name: nameOf(room, 'html'), bytes: yield* printedView(room) }; },
    *svg(room: RoomOnPage) {
        const picture = yield* pictureOf(room);
        return { name: nameOf(room, 'svg'), bytes: yield* pictureSvgInSteps(picture, { notice: standingNotice(room.standing) }) };
    },
    *gltf(room: RoomOnPage) {
        const { layout: { room: { title, name, job } }, ceiling, standing } = room, { solids } = dryFitOf(ceiling);
        yield;
        const bytes = yield* glbInSteps(title ?? name, solids, job.show.value, standingNotice(standing));
        return bytes.then(made => ({ name: nameOf(room, 'glb'), bytes: made }));
    },
    *ifc(room: RoomOnPage) {
        const { ceiling, standing } = room, { solids } = dryFitOf(ceiling);
        yield;
        return { name: nameOf(room, 'ifc'), bytes: yield* ifcInSteps(ceiling, solids, standingNotice(standing)) };
    },
} satisfies Page['exports'];

export const viewPage: Page<ViewContent> = {
    kind: 'view',
    showsOrder: true,
    showsChanges: true,
    content: viewInSteps, exports,
};
function nameOf({ layout }: RoomOnPage, ending: string): FileName {
    return fileName('ceiling', layout.room.name, ending);
}

function* pictureOf({ ceiling }: RoomOnPage): Steps<Picture> {
    const { solids } = dryFitOf(ceiling);
    yield;
    const picture = yield* drawViewInSteps(ceiling, solids);
    yield;
    return picture;
}

/** The picture as it stands still, and every piece in it by name for who reads it on a screen: on paper that is the cut list's to say. */
function* printedView(page: RoomOnPage): Steps<HtmlText> {
    const { layout: { room }, takeOff, standing } = page, show = room.job.show.value;
    const picture = yield* pictureSvgInSteps(yield* pictureOf(page), { as: 'part of a page', theme: 'print' });
    yield;
    const lists = PARTS.filter(part => takeOff.pieces.some(piece => piece.part === part)).map(part => html`<h2>${partNames[part]()}</h2>
<ul>${takeOff.pieces.filter(piece => piece.part === part).map(piece => html`<li>${pieceTitle(piece, show)}</li>`)}</ul>
`);
    return printable({
        title: t('{0} from below', room.title ?? room.name), landscape: true, notice: standingNotice(standing),
        style: '.picture svg{width:100%;height:auto;max-height:150mm}\n.pieces{column-width:90mm;column-gap:8mm}\n@media print{.pieces{display:none}}\n.pieces ul{list-style:none;margin:0;padding:0}\n.pieces li{break-inside:avoid}',
        body: html`<div class="picture">${trusted(picture)}</div>
<div class="pieces">${lists}</div>`,
    });
}
