import { drawView, pictureSvg } from '../../drawing/index.ts';
import { solidsOf } from '../../dryfit/solids.ts';
import { toGlb } from '../../exports/gltf/gltf.ts';
import { toIfc } from '../../exports/ifc/ifc.ts';
import { takeOffOf } from '../../pipeline/inspect.ts';
import { standingNotice } from '../../report/standing.ts';
import type { ExitCode } from '../exit-code.ts';
import type { World } from '../world.ts';
import { writeRoomFiles, type RoomFilesOptions } from '../room-files.ts';

export const MODEL_FORMATS = ['gltf', 'ifc', 'svg'] as const;
export interface ModelOptions extends RoomFilesOptions { readonly format: (typeof MODEL_FORMATS)[number] }

/** `ROOM.glb` or `ROOM.ifc` for every room: its pieces as solids, each with its name. `ROOM.svg`: a picture of them. */
export async function model(options: ModelOptions, world: World): Promise<ExitCode> {
    return writeRoomFiles(options, world, 'Building', async (ceiling, _, standing) => {
        const solids = solidsOf(ceiling, takeOffOf(ceiling)), notice = standingNotice(standing);
        const { name, title, job } = ceiling.room;
        switch (options.format) {
            case 'gltf': return [{ names: [name], ending: 'glb', content: await toGlb(title ?? name, solids, job.show.value, notice) }];
            case 'ifc': return [{ names: [name], ending: 'ifc', content: toIfc(ceiling, solids, notice) }];
            case 'svg': return [{ names: [name], ending: 'svg', content: pictureSvg(drawView(ceiling, solids), { notice }) }];
        }
    });
}
