import { drawView, pictureSvg } from '../../drawing/index.ts';
import { pieceTitle } from '../../drawing/plan/pieces.ts';
import { solidsOf } from '../../dryfit/solids.ts';
import { toGlb } from '../../exports/gltf/gltf.ts';
import { toIfc } from '../../exports/ifc/ifc.ts';
import { standingNotice } from '../../report/standing.ts';
import { PARTS } from '../../takeoff/model.ts';
import type { Page, RoomOnPage } from '../page.ts';
import { html, trusted } from '../shared/html.ts';
import { fileName, type FileName } from '../../text/file-name.ts';
import { printable } from '../shared/printable.ts';
import { t } from '../shared/words.ts';
import { viewContent, type ViewContent } from './content.ts';
import { partNames } from './render.ts';
import type { HtmlText } from '../../text/fit.ts';

export const viewPage: Page<ViewContent> = {
    kind: 'view',
    showsOrder: true,
    showsChanges: true,
    contentOf: viewContent,
    exports: {
        html: room => ({ name: nameOf(room, 'html'), bytes: printedView(room) }),
        svg: room => ({ name: nameOf(room, 'svg'), bytes: pictureSvg(drawView(room.ceiling, solidsOf(room.ceiling, room.takeOff)), { notice: standingNotice(room.standing) }) }),
        gltf: async room => ({ name: nameOf(room, 'glb'), bytes: await toGlb(room.layout.room.title ?? room.layout.room.name, solidsOf(room.ceiling, room.takeOff), room.layout.room.job.show.value, standingNotice(room.standing)) }),
        ifc: room => ({ name: nameOf(room, 'ifc'), bytes: toIfc(room.ceiling, solidsOf(room.ceiling, room.takeOff), standingNotice(room.standing)) }),
    },
};

function nameOf({ layout }: RoomOnPage, ending: string): FileName {
    return fileName('ceiling', layout.room.name, ending);
}

/** The picture as it stands still, and every piece in it by name for who reads it on a screen: on paper that is the cut list's to say. */
function printedView({ layout: { room }, ceiling, takeOff, standing }: RoomOnPage): HtmlText {
    const show = room.job.show.value;
    const picture = pictureSvg(drawView(ceiling, solidsOf(ceiling, takeOff)), { as: 'part of a page', theme: 'print' });
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
