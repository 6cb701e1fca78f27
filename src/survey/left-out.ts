import type { Ceiling } from '../ceiling/model.ts';
import { listed } from '../plain/words.ts';

/** What hangs under a surveyed ceiling and is not looked at, in sentences: whoever reads the list of sides must not take it for all there is. */
export function leftOutOfSurvey({ lines, around, walls }: Ceiling): string[] {
    const timbers = lines.filter(({ section }) => section.profile.solid).map(({ name }) => name);
    const alongWalls = walls.map(({ name }) => name).filter(name => { const own = around[name]; return own?.kind === 'half-beam' && own.section.profile.solid; });
    const bands = walls.map(({ name }) => name).filter(name => around[name]?.kind === 'band');
    const bandWords = bands.length === walls.length ? 'The band is' : `The ${bands.length === 1 ? 'band' : 'bands'} along the ${listed(bands)} ${bands.length === 1 ? 'wall is' : 'walls are'}`;
    return [
        ...timbers.length > 0 ? [`${timbers.length === 1 ? `Line ${timbers[0]!} is a solid timber` : `Lines ${listed(timbers)} are solid timbers`} and not looked at here: scribe ${timbers.length === 1 ? 'it' : 'them'} to the ceiling in place.`] : [],
        ...alongWalls.length > 0 ? [`What runs along the ${listed(alongWalls)} ${alongWalls.length === 1 ? 'wall' : 'walls'} is a solid timber and not looked at here: scribe it to the ceiling in place.`] : [],
        ...bands.length > 0 ? [`${bandWords} not looked at here.`] : [],
    ];
}
