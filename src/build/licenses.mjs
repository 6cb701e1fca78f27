// The license texts of the packages that are bundled: their authors ask that the text travels with the code.
import { existsSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { root } from './ready.mjs';

/**
 * @param {string[]} files paths of bundled files, relative to the repository
 * @returns {Promise<string>} one text, a section a package, sorted by name. Throws where a package has no license text.
 */
export async function licensesOf(files) {
    const folders = new Set(files.map(packageFolder).filter(folder => folder !== undefined));
    const sections = [];
    for (const folder of [...folders].sort()) {
        const { name, version, license } = JSON.parse(await readFile(join(root, folder, 'package.json'), 'utf8'));
        const text = await licenseText(folder);
        if (!text && !license) throw new Error(`${name} is bundled and states no license`);
        sections.push(`${name} ${version} (${license})\n\n${text ?? `License: ${license}`}`);
    }
    return `Cofferwright contains parts of these packages.\n\n${sections.join(`\n\n${'-'.repeat(80)}\n\n`)}\n`;
}

/** `node_modules/a/node_modules/@b/c` of a file in it: the innermost package. */
function packageFolder(file) {
    return /^(?:.*\/)?node_modules\/(?:@[^/]+\/)?[^/]+/.exec(file.replaceAll('\\', '/'))?.[0];
}

async function licenseText(folder) {
    if (!existsSync(join(root, folder))) return undefined;
    const name = (await readdir(join(root, folder))).find(entry => /^licen[cs]e/i.test(entry));
    return name && (await readFile(join(root, folder, name), 'utf8')).trim();
}
