/** Volume inside a closed surface of triangles, by the tetrahedra that they make with the origin. */
export function volumeOf(corner: (i: number) => readonly [number, number, number], triangles: readonly number[]): number {
    let sum = 0;
    for (let i = 0; i < triangles.length; i += 3) {
        const [[ax, ay, az], [bx, by, bz], [cx, cy, cz]] = [corner(triangles[i]!), corner(triangles[i + 1]!), corner(triangles[i + 2]!)];
        sum += (ax * (by * cz - bz * cy) - ay * (bx * cz - bz * cx) + az * (bx * cy - by * cx)) / 6;
    }
    return sum;
}
