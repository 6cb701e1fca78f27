// Makes the extension's picture for the list of extensions, which must be a PNG. Run by hand after a change of the SVG.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Resvg } from '@resvg/resvg-js';
import { root } from './ready.mjs';

const icons = join(root, 'syntaxes/icons');
writeFileSync(join(icons, 'cofferwright.png'), new Resvg(readFileSync(join(icons, 'cofferwright.svg'), 'utf8')).render().asPng());
