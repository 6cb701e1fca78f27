#!/usr/bin/env python3
"""
Figures of some pieces of the jobs in src/language/kinds, by plane trigonometry: walls and lines as straight lines, every corner the crossing of two of them set off
sideways. It shares no code, no data and no constants with the program. `python3 by_hand.py > by_hand.json`.

x runs east, y south, inches. A side's own face and back cross the faces and backs of what it ends at:
    miter  face x face, back x back          past   face x back, back x back
    butt   face x face, back x face          dies   face x face, back x face
The angle of an end is from square: more than 0 where the back is the longer there.
"""
from by_plane import *

# wall by wall: 170 x 139; band 3/4 in the north, half beams of 2 1/2 in the east and 3 1/4 in the west, nothing in the south
c = (170 - 4 - 3.25 - 14) / 3
x1, yA = 4 + c + 3.5, 0.75 + (139 - .75 - 7) / 2 + 3.5
north, east, south, west = band((0, 0), E), half((170, 0), S, 2.5), bare((170, 139), (-1, 0)), half((0, 139), (0, -1), 3.25)
one, two, A = line((x1, 0), S), line((x1 + c + 7, 0), S), line((0, yA), E)
J = 'walls-one-by-one'
side(J, 'side-1-1-west', one, 'R', (north, 'R', 'dies'), (A, 'L', 'miter'))
side(J, 'side-A-1-north', A, 'L', (one, 'R', 'miter'), (west, 'R', 'miter'))
side(J, 'side-east-2', east, 'R', (A, 'R', 'miter'), (south, 'R', 'dies'))
length(J, 'bottom-1', 139 - .75)
length(J, 'bottom-A-1', x1 - 2.75 - 3.25)
length(J, 'band-north', 170)
length(J, 'cleat-west-wall', 139 - .75)

# half beams of 2 1/2 round 164 x 144, lines equal
J = 'half-beams'
c, d = (164 - 6.5 - 14) / 3, (144 - 6.5 - 14) / 3
x1, yA = 3.25 + c + 3.5, 3.25 + d + 3.5
north, west = half((0, 0), E, 2.5), half((0, 144), (0, -1), 2.5)
one, A = line((x1, 0), S), line((0, yA), E)
side(J, 'side-north-1', north, 'R', (west, 'R', 'miter'), (one, 'R', 'miter'))
side(J, 'side-1-1-west', one, 'R', (north, 'R', 'miter'), (A, 'L', 'miter'))
length(J, 'bottom-A', 164 - 5)
length(J, 'bottom-1-1', yA - 2.75 - 2.5)
length(J, 'bottom-north', 164)
length(J, 'bottom-west', 144 - 5)

# two depths: band; A, B shallower, die into 1 and 2
J = 'two-depths'
c, d = (208 - 1.5 - 14) / 3, (150 - 1.5 - 14) / 3
x1, yA = .75 + c + 3.5, .75 + d + 3.5
north, west, south = band((0, 0), E), band((0, 150), (0, -1)), band((208, 150), (-1, 0))
one, two, A = line((x1, 0), S), line((x1 + c + 7, 0), S), line((0, yA), E)
side(J, 'side-A-2-north', A, 'L', (two, 'R', 'dies'), (one, 'L', 'dies'))
side(J, 'side-1-1-west', one, 'R', (north, 'R', 'dies'), (south, 'R', 'dies'))
length(J, 'bottom-A-1', c)
length(J, 'bottom-A-2', c)
length(J, 'blocking-A-2', c - 2 * .125)
length(J, 'blocking-A-1', c - 2 * .125)

# a T: line 2 stops at A, which runs through
J = 'tee-bar-through'
c, d = (188 - 1.5 - 14) / 3, (156 - 1.5 - 7) / 2
yA, x2 = .75 + d + 3.5, .75 + 2 * c + 7 + 3.5
length(J, 'bottom-2-1', d + .75)
length(J, 'bottom-A', 188 - 1.5)
# the same with the stem's bottom through: it runs to the far edge of A's bottom, which is cut there
J = 'tee-stem-through'
length(J, 'bottom-2-1', yA + 2.75 - .75)

# an L with bands 3/4: its outside corner at (150, 112)
J = 'ell'
north, east, wing, inner, south, west = (band(s, w) for s, w in (((0, 0), E), ((255, 0), S), ((255, 112), (-1, 0)), ((150, 112), S), ((150, 210), (-1, 0)), ((0, 210), (0, -1))))
one, two, A, B = line((73, 0), S), line((152.875, 0), S), line((0, 54), E), line((0, 114.875), E)
side(J, 'side-A-2-north', A, 'L', (two, 'R', 'miter'), (one, 'L', 'miter'))
side(J, 'side-B-1-north', B, 'L', (one, 'R', 'miter'), (west, 'R', 'dies'))
length(J, 'bottom-2', 112 - 1.5)
length(J, 'bottom-A-3', 255 - .75 - 152.875 - 2.75)

# out of square: north along x, the south-east corner by the east wall and the diagonal, the south-west one by the west wall and the south wall
def corners(N, Ea, So, We, d):
    al = acos((N * N + d * d - Ea * Ea) / (2 * N * d)); be = acos((d * d + We * We - So * So) / (2 * d * We))
    return (0, 0), (N, 0), (d * cos(al), d * sin(al)), (We * cos(al + be), We * sin(al + be))
NW, NE, SE, SW = corners(182.5, 145, 185, 142.25, 234)
def minus(a, b): return (a[0] - b[0], a[1] - b[1])
N, Ea, So, We = ((NW, minus(NE, NW)), (NE, minus(SE, NE)), (SE, minus(SW, SE)), (SW, minus(NW, SW)))
north, east, south, west = (band(*w) for w in (N, Ea, So, We))
J = 'one-diagonal'
# 1, 2 square to the north wall, in equal parts of it; A parallel to it, in equal parts between the corners at the west end
c = (182.5 - 1.5 - 14) / 3
one, two = line((.75 + c + 3.5, 0), S), line((.75 + 2 * c + 10.5, 0), S)
d = (SW[1] - 1.5 - 7) / 2
A = line((0, .75 + d + 3.5), E)
side(J, 'side-1-1-west', one, 'R', (north, 'R', 'dies'), (A, 'L', 'miter'))
side(J, 'side-1-2-west', one, 'R', (A, 'R', 'miter'), (south, 'R', 'dies'))
side(J, 'side-2-2-east', two, 'L', (south, 'R', 'dies'), (A, 'R', 'miter'))
side(J, 'side-A-1-north', A, 'L', (one, 'R', 'miter'), (west, 'R', 'dies'))
side(J, 'side-A-3-south', A, 'R', (two, 'L', 'miter'), (east, 'R', 'dies'))
side(J, 'side-A-1-south', A, 'R', (west, 'R', 'dies'), (one, 'R', 'miter'))
def strip(job, name, own, half_, a, b):
    """A bottom between two straight ends, each a (spot, way) line: `back` is its edge to the west or north."""
    f, k = (own.off(half_, s) for s in (('R', 'L') if own.way[0] > own.way[1] else ('L', 'R')))
    run = lambda e: abs(hypot(*minus(cross(e, b), cross(e, a))))
    put(job, name, face=run(f), back=run(k))
strip(J, 'bottom-1', one, 2.75, north.off(.75, 'R'), south.off(.75, 'R'))
strip(J, 'bottom-A-1', A, 2.75, west.off(.75, 'R'), one.off(2.75, 'R'))

# split: lines bisect the angle of the walls beside them; their distances are taken square to them between the middles of those walls
J = 'split'
def unit(v): n = hypot(*v); return (v[0] / n, v[1] / n)
def mid(a, b): return ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
def split(wall1, wall2, m1, m2, count, way_of, p=.75, w=7):
    u1, u2 = unit(wall1), unit(wall2)
    way = unit((u1[0] + u2[0], u1[1] + u2[1]))
    # square to the lines, from the first middle on
    sq = (-way[1], way[0]) if way_of == 'down' else (way[1], -way[0])
    span = (m2[0] - m1[0]) * sq[0] + (m2[1] - m1[1]) * sq[1]
    c = (span - 2 * p - count * w) / (count + 1)
    return [line((m1[0] + sq[0] * (p + c * (i + 1) + w * (i + .5)), m1[1] + sq[1] * (p + c * (i + 1) + w * (i + .5))), way) for i in range(count)]
one, two = split(minus(SW, NW), minus(SE, NE), mid(NW, SW), mid(NE, SE), 2, 'across')
(A,) = split(minus(NE, NW), minus(SE, SW), mid(NW, NE), mid(SW, SE), 1, 'down')
side(J, 'side-1-1-west', one, 'R', (north, 'R', 'dies'), (A, 'L', 'miter'))
side(J, 'side-A-2-north', A, 'L', (two, 'R', 'miter'), (one, 'L', 'miter'))
side(J, 'side-2-2-east', two, 'L', (south, 'R', 'dies'), (A, 'R', 'miter'))

# fanned: each end wall in equal parts of its own; half beams of 2 1/2; A parallel to the north wall
J = 'fanned'
north, east, south, west = (half(*w, 2.5) for w in (N, Ea, So, We))
def fan(i):
    t = lambda L: 3.25 + (L - 6.5 - 14) / 3 * (i + 1) + 7 * (i + .5)
    a = t(182.5); b = t(185)
    u = unit(minus(SE, SW))
    p, q = (a, 0), (SW[0] + u[0] * b, SW[1] + u[1] * b)
    return line(p, minus(q, p))
one, two = fan(0), fan(1)
d = (SW[1] - 6.5 - 7) / 2
A = line((0, 3.25 + d + 3.5), E)
side(J, 'side-1-1-west', one, 'R', (north, 'R', 'miter'), (A, 'L', 'miter'))
side(J, 'side-2-2-east', two, 'L', (south, 'R', 'miter'), (A, 'R', 'miter'))
side(J, 'side-A-2-south', A, 'R', (one, 'L', 'miter'), (two, 'R', 'miter'))
side(J, 'side-north-1', north, 'R', (west, 'R', 'miter'), (one, 'R', 'miter'))

# at 45 degrees, two by two: one line each way through the middle of 144 x 120
J = 'forty-five'
north, east, south, west = (band(s, w) for s, w in (((0, 0), E), ((144, 0), S), ((144, 120), (-1, 0)), ((0, 120), (0, -1))))
fall, rise = line((72, 60), (1, 1)), line((72, 60), (1, -1))
side(J, 'side-1-1-south-west', fall, 'R', (north, 'R', 'dies'), (rise, 'L', 'miter'))
side(J, 'side-1-1-north-east', fall, 'L', (rise, 'L', 'miter'), (north, 'R', 'dies'))
side(J, 'side-A-2-south-east', rise, 'R', (fall, 'L', 'miter'), (north, 'R', 'dies'))

# a line that begins at A, one that stops at it
J = 'part-way'
c, d = (180 - 1.5 - 14) / 3, (168 - 1.5 - 14) / 3
yA = .75 + d + 3.5
length(J, 'bottom-1', 168 - .75 - (yA + 2.75))
length(J, 'bottom-stub', yA - 2.75 - .75)
# a ring: outer corners in outside miters, inner ones in miters
J = 'ring'
c, d = (188 - 1.5 - 14) / 3, (168 - 1.5 - 14) / 3
one, two, A, B = line((.75 + c + 3.5, 0), S), line((.75 + 2 * c + 10.5, 0), S), line((0, .75 + d + 3.5), E), line((0, .75 + 2 * d + 10.5), E)
side(J, 'side-A-1-south', A, 'R', (one, 'L', 'miter'), (two, 'R', 'miter'))
side(J, 'side-A-1-north', A, 'L', (two, 'L', 'miter'), (one, 'R', 'miter'))
# capped: 8" bottoms, overhang 1/2 on faces 7" apart; cut between: coffer less two overhangs, at a band less one
J = 'capped'
c, d = (174 - 1.5 - 14) / 3, (146 - 1.5 - 7) / 2
length(J, 'bottom-A-2', c - 1); length(J, 'bottom-A-1', c - .5); length(J, 'bottom-1', 146 - 1.5)
# lapped: 6" bottoms let 1/4 into the sides of a channel of 5 1/2, so no play
J = 'lapped'
length(J, 'bottom-A-2', c + 2 * (.75 - .25)); length(J, 'bottom-A-1', c + .5)
# unlike sides: 3/4 on one flank, 1 on the other: the east of 1, the west of 2, the south of A. A beam is 5 1/2 + 3/4 + 1 wide
J = 'unlike'
wo = 5.5 + .75 + 1
cu, du = (174 - 1.5 - 2 * wo) / 3, (146 - 1.5 - wo) / 2
x1, x2, yA = .75 + cu + .75 + 2.75, .75 + 2 * cu + wo + 1 + 2.75, .75 + du + .75 + 2.75
north, west, south, east = band((0, 0), E), band((0, 146), (0, -1)), band((174, 146), (-1, 0)), band((174, 0), S)
one, one_oak, two, two_oak, A, A_oak = (line(spot, way, side=t) for spot, way in (((x1, 0), S), ((x2, 0), S), ((0, yA), E)) for t in (.75, 1))
side(J, 'side-A-2-north', A, 'L', (two_oak, 'R', 'miter'), (one_oak, 'L', 'miter'))
side(J, 'side-A-2-south', A_oak, 'R', (one_oak, 'L', 'miter'), (two_oak, 'R', 'miter'))
side(J, 'side-A-1-north', A, 'L', (one, 'R', 'miter'), (west, 'R', 'dies'))
side(J, 'side-A-3-south', A_oak, 'R', (two, 'L', 'miter'), (east, 'R', 'dies'))
side(J, 'side-1-1-west', one, 'R', (north, 'R', 'dies'), (A, 'L', 'miter'))
side(J, 'side-1-2-east', one_oak, 'L', (south, 'R', 'dies'), (A_oak, 'R', 'miter'))
side(J, 'side-2-2-west', two_oak, 'R', (A_oak, 'R', 'miter'), (south, 'R', 'dies'))
length(J, 'bottom-1', 146 - 1.5); length(J, 'bottom-A-1', cu + .75); length(J, 'bottom-A-2', cu + 2); length(J, 'bottom-A-3', cu + .75)
length(J, 'blocking-A-2', cu + 2 - 1 / 16)
# the same sides over a bottom of 8 1/4, 1/2 beyond each; line 2 stops at A, and 1 and 2 have oak on the east
J = 'unlike-capped'
x2 = .75 + 2 * cu + wo + .75 + 2.75
two, two_oak = line((x2, 0), S), line((x2, 0), S, side=1)
side(J, 'side-2-1-west', two, 'R', (north, 'R', 'dies'), (A, 'L', 'miter'))
side(J, 'side-2-1-east', two_oak, 'L', (A, 'L', 'miter'), (north, 'R', 'dies'))
side(J, 'side-A-2-north', A, 'L', (two, 'R', 'miter'), (one_oak, 'L', 'miter'))
side(J, 'side-A-2-south', A_oak, 'R', (one_oak, 'L', 'miter'), (east, 'R', 'dies'))
length(J, 'bottom-A', 174 - 1.5); length(J, 'bottom-2-1', du - .5); length(J, 'bottom-1-2', du - .5)
# half of such a beam round 188 x 150: the side of oak, 1", in the north, east and south, that of 3/4" in the west; bottoms run east-west
J = 'half-beams-unlike'
ch, dh = (188 - 3.25 - 3.5 - 2 * wo) / 3, (150 - 7 - wo) / 2
x1, yA = 3.25 + ch + .75 + 2.75, 3.5 + dh + .75 + 2.75
north, east, south = half((0, 0), E, 2.5, 1), half((188, 0), S, 2.5, 1), half((188, 150), (-1, 0), 2.5, 1)
west = half((0, 150), (0, -1), 2.5)
one, one_oak, A, A_oak = (line(spot, way, side=t) for spot, way in (((x1, 0), S), ((0, yA), E)) for t in (.75, 1))
side(J, 'side-north-1', north, 'R', (west, 'R', 'miter'), (one, 'R', 'miter'))
side(J, 'side-west-2', west, 'R', (south, 'R', 'miter'), (A_oak, 'R', 'miter'))
side(J, 'side-1-1-west', one, 'R', (north, 'R', 'miter'), (A, 'L', 'miter'))
side(J, 'side-A-1-south', A_oak, 'R', (west, 'R', 'miter'), (one, 'R', 'miter'))
length(J, 'bottom-A', 188 - 5); length(J, 'bottom-1-1', 3.5 + dh + .75 - 2.5); length(J, 'bottom-north', 188); length(J, 'bottom-west', 150 - 5)
# 20' x 9', bands of 3/4", boards of 16' less 1" at the ends: 238 1/2 is more than 191. A's bottom is spliced at 96 from the wall, 95 1/4 from the band.
# north: in the middle, 119 1/4, which is 24 from that; south: 24 from both at least, at places 6" apart: 144. Trim scarfed, 3/4" thick: along the band in the
# middle; along A at least 24 from its splice, counted from the east: 144. A scarf takes 3/4" off the face of the left piece, and gives it to the right one
J = 'long-sides'
for name, inches in (('A-1-north-a', 119.25), ('A-1-north-b', 119.25), ('A-1-south-a', 144), ('A-1-south-b', 94.5)):
    length(J, 'side-' + name, inches)
put(J, 'trim-1-north-a', face=119.25 - 1.5, back=119.25, left=45, right=45); put(J, 'trim-1-north-b', face=119.25, back=119.25, overall=120, left=-45, right=45)
put(J, 'trim-1-south-a', face=144 - 1.5, back=144, left=45, right=45); put(J, 'trim-1-south-b', face=94.5, back=94.5, overall=95.25, left=-45, right=45)
length(J, 'cleat-A-1-north-a', 119.25 - .5)
# bench-made: inside 5 1/2 as the bottom wants, blocking 5 3/8; blocking in between less 1/16 in all
J = 'bench-made'
length(J, 'bottom-A-2', c + 1.5); length(J, 'blocking-A-2', c + 1.5 + .125 - 1 / 16); length(J, 'blocking-A-1', c + .75 + .0625 - 1 / 16)
# butted, north-south runs past
J = 'butted'
north, west = band((0, 0), E), band((0, 146), (0, -1))
one, two, A = line((.75 + c + 3.5, 0), S), line((.75 + 2 * c + 10.5, 0), S), line((0, .75 + d + 3.5), E)
side(J, 'side-1-1-west', one, 'R', (north, 'R', 'dies'), (A, 'L', 'past'))
side(J, 'side-A-2-north', A, 'L', (two, 'R', 'butt'), (one, 'L', 'butt'))
side(J, 'side-A-1-south', A, 'R', (west, 'R', 'dies'), (one, 'R', 'butt'))
# an outside corner of half beams at (132, 96)
J = 'outside-corner'
north, east, wing, inner, south, west = (half(s, w, 2.5) for s, w in (((0, 0), E), ((216, 0), S), ((216, 96), (-1, 0)), ((132, 96), S), ((132, 168), (-1, 0)), ((0, 168), (0, -1))))
side(J, 'side-wing-south-1', wing, 'R', (east, 'R', 'miter'), (inner, 'R', 'miter'))
side(J, 'side-inner-east-1', inner, 'R', (wing, 'R', 'miter'), (south, 'R', 'miter'))
# crown 3 1/2, spring 38, coped: east-west pieces square and full, north-south ones mitered at the long point
J = 'crown-coped'
c, d = (168 - 1.5 - 14) / 3, (132 - 1.5 - 7) / 2
put(J, 'trim-1-north', back=c, face=c, left=0, right=0)
put(J, 'trim-1-west', back=d, face=d - 2 * 3.5 * sin(radians(38)), left=45, right=45,
    miter=degrees(atan(sin(radians(38)))), bevel=degrees(asin(cos(radians(38)) * cos(radians(45)))))
# round 4 x 8 with 1/4 clearance: 4 1/2 inside, 6 outside, of sides 3/4
J = 'wrapped'
c = (188 - 1.5 - 6) / 2
put(J, 'side-A-1-north', face=c, back=c, overall=c, left=0, right=0)
# the closing wall: south = 18 - 7 = 11 feet
J = 'closing-wall'
length(J, 'band-south', 132)
# panels, 1/8" open between two and along walls: each is told by the longer way, with sheets that have no grain
J = 'panels'
c = (132 - 1.5 - 14) / 3
one, two, A = .75 + c + 3.5, .75 + 2 * c + 10.5, .75 + (120 - 1.5 - 7) / 2 + 3.5
length(J, 'panel-1', A - 1 / 16 - 1 / 8); length(J, 'panel-2', A - 1 / 16 - 1 / 8); length(J, 'panel-3', A - 1 / 16 - 1 / 8); length(J, 'panel-6', 120 - A - 3 / 16)
# round a ring whose middles stand at 48 and 96, 36 and 72: 1/8 open at the walls, 1/16 off the middle of each line. Sheets of 60 x 120 without grain, 119 of it after the end trim: parted at the ring's east and
# west it comes in four, parted at its north and south 143 3/4 is too long for one
J = 'panels-round-a-ring'
length(J, 'panel-1-a', 108 - .25); length(J, 'panel-1-d', 108 - .25); length(J, 'panel-1-b', 48 + .125); length(J, 'panel-1-c', 48 + .125); length(J, 'panel-2', 48 - .125)
one, two, A, B = line((48, 0), S), line((96, 0), S), line((0, 36), E), line((0, 72), E)
side(J, 'side-A-1-north', A, 'L', (two, 'L', 'miter'), (one, 'R', 'miter'))
# a bay at 45 degrees: its corners 34 / sqrt 2 apart, both ways; line 1 ends at the wall that leans
J = 'bay'
c, d, leg = (168 - 1.5 - 14) / 3, (132 - 1.5 - 7) / 2, 34 / sqrt(2)
one, A, bay_west = line((.75 + c + 3.5, 0), S), line((0, .75 + d + 3.5), E), band((36 + leg, 132 + leg), (-1, -1))
side(J, 'side-1-2-west', one, 'R', (A, 'R', 'miter'), (bay_west, 'R', 'dies'))
side(J, 'side-1-2-east', one, 'L', (bay_west, 'R', 'dies'), (A, 'R', 'miter'))
length(J, 'bottom-A-2', c + 1.5); length(J, 'band-north', 168)
# a breast of 18" by 64" in the east: line A ends at it, at its face 173 1/4
J = 'chimney-breast'
one, two, A, breast = line((60, 0), S), line((120, 0), S), line((0, 82), E), band((174, 50), S)
side(J, 'side-A-3-north', A, 'L', (breast, 'R', 'dies'), (two, 'L', 'miter'))
length(J, 'bottom-A-1', 60 - 2.75 - .75); length(J, 'bottom-A-3', 173.25 - 122.75); length(J, 'bottom-1', 164 - 1.5); length(J, 'band-east-1', 50 - 1.5)
put(J, 'band-breast', face=64 + 1.5, back=64); put(J, 'band-breast-north', face=18.75, back=18)
# 1 runs through at A and is cut at B; A is cut at 1 and runs through at 2
J = 'crossing-by-crossing'
c, d = (188 - 1.5 - 14) / 3, (156 - 1.5 - 14) / 3
x1, yB = .75 + c + 3.5, .75 + 2 * d + 10.5
length(J, 'bottom-1-1', yB - 2.75 - .75); length(J, 'bottom-1-3', 155.25 - yB - 2.75); length(J, 'bottom-A-1', x1 - 2.75 - .75); length(J, 'bottom-A-2', 187.25 - x1 - 2.75)
# crown at a spring of 45 degrees in square corners; tables of compound miters have 35.26 and 30.00 for it
J = 'crown-outside'
t, flat = 3.5 * sin(radians(45)), dict(miter=degrees(atan(sin(radians(45)))), bevel=degrees(asin(cos(radians(45)) ** 2)))
put(J, 'trim-4-north', back=215.25 - 67.5, face=215.25 - 67.5 - 2 * t, left=45, right=45, **flat)
put(J, 'trim-4-west', back=167.25 - 54.5, face=167.25 - 54.5 - 2 * t, left=45, right=45, **flat)
# half beams of 2 3/4 deeper than the lines: lines die into them, blocking stays 1/8 clear
J = 'deeper-half-beams'
c, d = (180 - 7 - 14) / 3, (128 - 7 - 7) / 2
north, east, west = half((0, 0), E, 2.75), half((180, 0), S, 2.75), half((0, 128), (0, -1), 2.75)
one, A = line((3.5 + c + 3.5, 0), S), line((0, 3.5 + d + 3.5), E)
side(J, 'side-1-1-west', one, 'R', (north, 'R', 'dies'), (A, 'L', 'miter'))
side(J, 'side-north-1', north, 'R', (west, 'R', 'miter'), (east, 'R', 'miter'))
length(J, 'bottom-1', 128 - 7); length(J, 'bottom-A-2', c + 1.5); length(J, 'blocking-1', 128 - 7 - .25)
# half beams of 2 3/4 in the north and the south, deeper than the lines and than those of 2 1/2 in the east and the west, which die into them
J = 'half-beams-of-two-depths'
c, d = (180 - 6.5 - 14) / 3, (132 - 7 - 7) / 2
north, east, south, west = half((0, 0), E, 2.75), half((180, 0), S, 2.5), half((180, 132), (-1, 0), 2.75), half((0, 132), (0, -1), 2.5)
one, A = line((3.25 + c + 3.5, 0), S), line((0, 3.5 + d + 3.5), E)
side(J, 'side-north-1', north, 'R', (bare((0, 132), (0, -1)), 'R', 'dies'), (bare((180, 0), S), 'R', 'dies'))
side(J, 'side-west-1', west, 'R', (A, 'L', 'miter'), (north, 'R', 'dies'))
side(J, 'side-east-2', east, 'R', (A, 'R', 'miter'), (south, 'R', 'dies'))
side(J, 'side-1-1-west', one, 'R', (north, 'R', 'dies'), (A, 'L', 'miter'))
side(J, 'side-A-1-north', A, 'L', (one, 'R', 'miter'), (west, 'R', 'miter'))
length(J, 'bottom-north', 180); length(J, 'bottom-west', 132 - 7); length(J, 'blocking-west', 132 - 7 - .25); length(J, 'cleat-east-wall', 132 - 7)
length(J, 'bottom-A-1', c + 1.5)
# timbers of 2 3/4 in the north and 5 1/4 in the south, from wall to wall; half beams of 2 1/2 in the east and the west, and lines 1 and 2, die into them
J = 'timbers-along-walls'
c, d = (168 - 6.5 - 14) / 3, (132 - 8 - 7) / 2
north, south = band((0, 0), E, 2.75), band((168, 132), (-1, 0), 5.25)
west, one, A = half((0, 132), (0, -1), 2.5), line((3.25 + c + 3.5, 0), S), line((0, 2.75 + d + 3.5), E)
side(J, 'side-west-2', west, 'R', (south, 'R', 'dies'), (A, 'R', 'miter'))
side(J, 'side-1-1-west', one, 'R', (north, 'R', 'dies'), (A, 'L', 'miter'))
side(J, 'side-A-1-north', A, 'L', (one, 'R', 'miter'), (west, 'R', 'miter'))
length(J, 'timber-north', 168); length(J, 'timber-south', 168); length(J, 'bottom-west', 132 - 8); length(J, 'blocking-1', 132 - 8 - .25)
# a breast of 72 by 20: half beams of 3 along it, of 2 along its cheeks, each with a return of 3/4 where its wall ends; one of 3 along the east half of the south wall, beside a band
J = 'returned-half-beams'
length(J, 'bottom-breast', 72 - 1.5); length(J, 'bottom-cheek-1', 20 - .75); length(J, 'bottom-south-1', 72 - .75); length(J, 'band-south-2', 96)
put(J, 'side-breast-1', face=72, back=72 - 1.5, left=-45, right=-45)
put(J, 'side-breast-return-west', face=3.75, back=3); put(J, 'side-cheek-1-return-south', face=2.75, back=2); put(J, 'side-south-1-return-west', face=3.75, back=3)
# as deep as the others, A dies into them: their sides run from band to band
J = 'dies-by-choice'
c = (180 - 1.5 - 14) / 3
put(J, 'side-A-2-north', face=c, back=c, overall=c, left=0, right=0); put(J, 'side-1-1-west', face=142.5, back=142.5, left=0, right=0)
length(J, 'bottom-A-2', c)
# 1 is 7" wide, its twin 5", 9" from it: 3" between
J = 'doubled'
c = (188 - 1.5 - 7) / 2
x1 = .75 + c + 3.5
length(J, 'bottom-A-1', c + .75); length(J, 'bottom-A-2', 3 + 1.5); length(J, 'bottom-A-3', 187.25 - (x1 + 9 + 1.75)); length(J, 'bottom-twin', 132 - 1.5)
# a wall that steps in by 14": bands mitered round its outside corner
J = 'jog'
d = (159 - 1.5 - 7) / 2
length(J, 'bottom-A', 186 - 1.5); length(J, 'bottom-1-1', d + .75)
put(J, 'band-jog', face=14.75, back=14); put(J, 'band-east-2', face=75, back=74.25)
# a strip 3/4" thick against the sides: its back is the coffer's edge
J = 'molding-against'
c, d = (174 - 6.5 - 14) / 3, (146 - 6.5 - 7) / 2
put(J, 'molding-A-2-north', face=c - 1.5, back=c, left=45, right=45); put(J, 'molding-1-1-west', face=d - 1.5, back=d, left=45, right=45)
# a strip of 1 1/2" under the beam, 1/2" of it beyond the face and 1" behind it; at a band it ends on the band's face
J = 'molding-under'
c, d = (174 - 1.5 - 14) / 3, (146 - 1.5 - 7) / 2
put(J, 'molding-A-2-north', face=c - 1, back=c + 2, left=45, right=45); put(J, 'molding-1-1-west', face=d - .5, back=d + 1, left=0, right=45)
# timbers 5 1/2" wide and deeper than the box beam, which dies into A
J = 'solid'
d = (144 - 1.5 - 5.5) / 2
length(J, 'timber-A', 188 - 1.5); length(J, 'timber-1-1', d); length(J, 'bottom-2-1', d); length(J, 'blocking-2-1', d - .25)
put(J, 'side-2-1-west', face=d, back=d, left=0, right=0)
# spliced 10' 2" from the east, and on the center of line 2
J = 'splices'
x2 = .75 + 2 * (312 - 1.5 - 28) / 5 + 7 + 3.5
length(J, 'bottom-B-a', x2 - .75); length(J, 'bottom-B-b', 312 - 122 - x2); length(J, 'bottom-B-c', 122 - .75)
# a court of 96" by 78" from the south
J = 'u-shape'
one, two, A, court = line((48, 0), S), line((144, 0), S), line((0, 51), E), band((192, 102), (-1, 0))
side(J, 'side-2-2-west', two, 'R', (A, 'R', 'miter'), (court, 'R', 'dies'))
length(J, 'bottom-1', 180 - 1.5); length(J, 'bottom-2', 102 - 1.5); length(J, 'bottom-A-1', 48 - 2.75 - .75); length(J, 'bottom-A-2', 96 - 5.5)
put(J, 'band-court-south', face=96 + 1.5, back=96)
print(json.dumps(OUT, indent=1))
