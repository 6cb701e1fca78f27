"""Interpolation between readings by another library: scipy.interpolate.LinearNDInterpolator (Qhull's Delaunay triangulation, barycentric).
python3 by_qhull.py > by_qhull.json   (written with scipy 1.17.1)
Readings lie at random, so that no four are on one circle and there is one triangulation alone. Lengths are whole numbers."""
import json, random
from scipy.interpolate import LinearNDInterpolator

surveys = []
for seed, count in ((1, 4), (2, 12), (3, 60), (4, 200)):
    random.seed(seed)
    readings = [[random.randrange(3_900_000), random.randrange(2_900_000), random.randrange(32_000, 48_000)] for _ in range(count)]
    between = LinearNDInterpolator([(x, y) for x, y, _ in readings], [up for _, _, up in readings])
    asked = [[random.randrange(3_900_000), random.randrange(2_900_000)] for _ in range(60)]
    found = [float(between(x, y)) for x, y in asked]
    surveys.append({"readings": readings, "asked": asked, "found": [None if up != up else round(up, 4) for up in found]})
print(json.dumps(surveys, separators=(",", ":")))
