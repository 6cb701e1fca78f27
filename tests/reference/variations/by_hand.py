#!/usr/bin/env python3
"""
Figures of some pieces of the rooms in variations.coffer, as ../kinds/by_hand.py has them of the examples: what those have one by one, together. It shares no
code, no data and no constants with the program. `python3 by_hand.py > by_hand.json`.
"""
import sys
sys.dont_write_bytecode = True
sys.path.insert(0, '../kinds')
from by_plane import *

J = 'metric'
c, d = (4800 / 25.4 - 1.5 - 14) / 3, (3600 / 25.4 - 1.5 - 7) / 2
length(J, 'bottom-A-2', c + 1.5); length(J, 'bottom-1', 3600 / 25.4 - 1.5); length(J, 'band-north', 4800 / 25.4)
put(J, 'side-1-1-west', face=d, back=d + .75, left=0, right=45)
# lines 1 and 2 as deep as the half beams, A less: it dies into all of them and stops at 2
J = 'stem-low'
c = (192 - 6.5 - 14) / 3
north, south, west = half((0, 0), E, 2.5), half((192, 144), (-1, 0), 2.5), half((0, 144), (0, -1), 2.5)
one, two = line((3.25 + c + 3.5, 0), S), line((3.25 + 2 * c + 10.5, 0), S)
side(J, 'side-1-1-west', one, 'R', (north, 'R', 'miter'), (south, 'R', 'miter'))
side(J, 'side-north-1', north, 'R', (west, 'R', 'miter'), (one, 'R', 'miter'))
put(J, 'side-A-1-north', face=c, back=c, left=0, right=0); length(J, 'bottom-A-1', c); length(J, 'bottom-A-2', c); length(J, 'bottom-1', 144 - 5)
# line 1 is mitered with a half beam that leans by 45 degrees: corners of 135 and of 45
J = 'bay-halves'
c, d, leg = (168 - 6.5 - 14) / 3, (132 - 6.5 - 7) / 2, 34 / sqrt(2)
one, A, bay_west = line((3.25 + c + 3.5, 0), S), line((0, 3.25 + d + 3.5), E), half((36 + leg, 132 + leg), (-1, -1), 2.5)
side(J, 'side-1-2-west', one, 'R', (A, 'R', 'miter'), (bay_west, 'R', 'miter'))
side(J, 'side-1-2-east', one, 'L', (bay_west, 'R', 'miter'), (A, 'R', 'miter'))
length(J, 'bottom-A-2', c + 1.5); length(J, 'bottom-north', 168)
# bottoms 1/2" beyond the faces, of half beams too: 3 3/4" from the wall
J = 'capped-halves'
c = (180 - 6.5 - 14) / 3
length(J, 'bottom-A-2', c - 1); length(J, 'bottom-A-1', c - 1); length(J, 'bottom-1', 150 - 7.5); length(J, 'bottom-north', 180); length(J, 'bottom-west', 150 - 7.5)
# bottoms 6" wide, let 1/4" into the sides of a channel of 5 1/2"
J = 'lapped-lines'
c, d = (174 - 1.5 - 14) / 3, (140 - 1.5 - 7) / 2
put(J, 'side-A-2-north', face=c, back=c + 1.5, left=45, right=45); put(J, 'side-1-1-west', face=d, back=d + .75, left=0, right=45)
length(J, 'bottom-1-1', d + .5); length(J, 'bottom-A', 174 - 1.5)
# A's sides run past those of 1 and 2, which end at its faces
J = 'butted-lines'
put(J, 'side-A-2-north', face=c + 1.5, back=c + 1.5, left=0, right=0); put(J, 'side-1-1-west', face=d, back=d, left=0, right=0)
length(J, 'bottom-1-1', d + .75); length(J, 'bottom-A', 174 - 1.5)
J = 'bare'
c, d = (160 - 14) / 3, (120 - 7) / 2
put(J, 'side-1-1-west', face=d, back=d + .75, left=0, right=45); length(J, 'bottom-1', 120); length(J, 'bottom-A-1', c + .75)
J = 'unequal'
put(J, 'side-1-1-west', face=45.75, back=46.5, left=0, right=45); length(J, 'bottom-A-1', 40 - 3.5); length(J, 'bottom-A-2', 60 - 5.5); length(J, 'bottom-A-3', 150 - .75 - 102.75)
# each panel is two of half its width, 1/8" open between panels and at walls, 1/16" of it on each side of a middle
J = 'seamed'
length(J, 'panel-1-a', 72 - 3 / 16); length(J, 'panel-2-b', 72 - 3 / 16); length(J, 'panel-6-a', 72 - 3 / 16)
# the bottom of the north half beam in three
J = 'spliced'
length(J, 'bottom-north-a', 60); length(J, 'bottom-north-b', 240 - 84 - 60); length(J, 'bottom-north-c', 84)
# as deep as the half beams, A dies into them: the side of the west one runs from corner to corner
J = 'dying-halves'
c = (180 - 7.5 - 14) / 3
north, south, west = half((0, 0), E, 3), half((180, 132), (-1, 0), 3), half((0, 132), (0, -1), 3)
side(J, 'side-west-1', west, 'R', (south, 'R', 'miter'), (north, 'R', 'miter'))
put(J, 'side-A-1-north', face=c, back=c, left=0, right=0); length(J, 'bottom-A-2', c)
# half beams round a court: line 2 ends at the one on its south, outside miters at both its ends
J = 'u-halves'
two, court, court_east, court_west = line((144, 0), S), half((192, 102), (-1, 0), 2.5), half((192, 180), (0, -1), 2.5), half((96, 102), (0, 1), 2.5)
side(J, 'side-court-south-1', court, 'R', (two, 'R', 'miter'), (court_west, 'R', 'miter'))
side(J, 'side-court-south-2', court, 'R', (court_east, 'R', 'miter'), (two, 'L', 'miter'))
length(J, 'bottom-2', 102 - 5)
print(json.dumps(OUT, indent=1))
