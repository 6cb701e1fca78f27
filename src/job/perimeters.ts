import { SIDES, type Perimeter, type Room } from './model.ts';

/** What is said to run along the walls of a room, each as it is said once. */
export function perimetersOf({ grid }: Pick<Room, 'grid'>): Perimeter[] {
    return grid ? [...new Set(SIDES.flatMap(side => grid.around[side] ?? []))] : [];
}
