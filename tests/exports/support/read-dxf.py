"""Reads DXF files with ezdxf and prints what it found, one JSON object a file: a reader that is none of ours."""
import json
import sys
from collections import Counter

import ezdxf

for path in sys.argv[1:]:
    document = ezdxf.readfile(path)
    audit = document.audit()
    space = document.modelspace()
    print(json.dumps({
        "version": document.dxfversion,
        "units": document.units,
        "troubles": [entry.message for entry in audit.errors + audit.fixes],
        "counts": Counter(entity.dxftype() for entity in space),
        "layers": sorted(layer.dxf.name for layer in document.layers),
        "weights": {layer.dxf.name: layer.dxf.lineweight for layer in document.layers},
        "texts": [entity.plain_text() for entity in space.query("TEXT")],
    }))
