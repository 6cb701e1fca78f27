"""Walls and lines as straight lines set off sideways, and what crosses where: see by_hand.py and ../variations/by_hand.py. x runs east, y south, inches."""
import json
from math import atan, atan2, acos, asin, cos, sin, tan, degrees, radians, hypot, sqrt

OUT = {}

class Carrier:
    """A wall or a line: a spot, the way it runs; its faces and backs so far off the center, to the left and to the right of the way."""
    def __init__(self, spot, way, face, back):
        n = hypot(*way)
        self.spot, self.way, self.face, self.back = spot, (way[0] / n, way[1] / n), face, back
    def off(self, by, side):
        dx, dy = self.way
        right = (-dy, dx)
        s = 1 if side == 'R' else -1
        return (self.spot[0] + right[0] * by * s, self.spot[1] + right[1] * by * s), self.way

def cross(a, b):
    (ax, ay), (ux, uy) = a
    (bx, by), (vx, vy) = b
    d = ux * vy - uy * vx
    t = ((bx - ax) * vy - (by - ay) * vx) / d
    return (ax + ux * t, ay + uy * t)

def line(spot, way, inside=5.5, side=0.75):
    return Carrier(spot, way, inside / 2 + side, inside / 2)
def band(spot, way, p=0.75): return Carrier(spot, way, p, p)
def half(spot, way, width, side=0.75): return Carrier(spot, way, width + side, width)
def bare(spot, way): return Carrier(spot, way, 0, 0)

ENDS = {'miter': ('face', 'face', 'back', 'back'), 'past': ('face', 'back', 'back', 'back'), 'butt': ('face', 'face', 'back', 'face'), 'dies': ('face', 'face', 'back', 'face')}

def side(job, name, own, flank, left, right):
    """left, right: (carrier, its flank that looks at the piece, how). Left and right for somebody in the coffer who looks at the face."""
    dx, dy = own.way
    out = (-dy, dx) if flank == 'R' else (dy, -dx)      # the way the face looks
    to_right = (out[1], -out[0])                          # for somebody who looks against it, y to the south
    lines = {'face': own.off(own.face, flank), 'back': own.off(own.back, flank)}
    at = {}
    for end, (other, fl, how) in (('left', left), ('right', right)):
        _, facing, _, backing = ENDS[how]
        for edge, meets in (('face', facing), ('back', backing)):
            p = cross(lines[edge], other.off(getattr(other, meets), fl))
            at[end, edge] = p[0] * to_right[0] + p[1] * to_right[1]
    face, back = at['right', 'face'] - at['left', 'face'], at['right', 'back'] - at['left', 'back']
    overall = max(at['right', 'face'], at['right', 'back']) - min(at['left', 'face'], at['left', 'back'])
    ts = own.face - own.back
    put(job, name, face=face, back=back, overall=overall,
        left=degrees(atan((at['left', 'face'] - at['left', 'back']) / ts)), right=degrees(atan((at['right', 'back'] - at['right', 'face']) / ts)))

def put(job, name, **figures):
    OUT.setdefault(job, {})[name] = {k: round(v, 5) + 0 for k, v in figures.items()}

def length(job, name, inches): put(job, name, face=inches, back=inches)

E, S = (1, 0), (0, 1)
