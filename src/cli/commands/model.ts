import { solidsOf } from '../../dryfit/solids.ts';
import { toGlb } from '../../exports/gltf/gltf.ts';
import { toIfc } from '../../exports/ifc/ifc.ts';
import { takeOffOf } from '../../pipeline/inspect.ts';
import type { ExitCode } from '../exit-code.ts';
import type { World } from '../input.ts';
import { writeRoomFiles, type RoomFilesOptions } from '../room-files.ts';

export const MODEL_FORMATS = ['gltf', 'ifc'] as const;
export interface ModelOptions extends RoomFilesOptions { readonly format: (typeof MODEL_FORMATS)[number] }

/** `ROOM.glb` or `ROOM.ifc` for every room: its pieces as solids, each with its name. */
export async function model(options: ModelOptions, world: World): Promise<ExitCode> {
    return writeRoomFiles(options, world, 'Building', async ceiling => {
        const solids = solidsOf(ceiling, takeOffOf(ceiling));
        const { name, title, job } = ceiling.room;
        return [options.format === 'ifc'
            ? { names: [name], ending: 'ifc', content: toIfc(ceiling, solids) }
            : { names: [name], ending: 'glb', content: await toGlb(title ?? name, solids, job.show.value) }];
    });
}
