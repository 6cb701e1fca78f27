import type { Perimeter, Room } from './model.ts';

/** What is said to run along the walls of a room, each as it is said once. */
export function perimetersOf({ grid }: Pick<Room, 'grid'>): Perimeter[] {
    return grid ? [...new Set(Object.values(grid.around).flatMap(own => own ?? []))] : [];
}
