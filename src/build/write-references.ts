import { writeFileSync } from 'node:fs';
import { languageReference } from '../language/reference.ts';
import { createCofferServices } from '../language/services.ts';
import { RULES } from '../rules/index.ts';
import { ruleReference } from '../rules/reference.ts';
import { kindPages } from './kinds.ts';
import { paneIconFiles } from './pane-icon-files.ts';
import { reportSchemas } from './report-schemas.ts';
import { tmLanguage } from './syntax.ts';

const { coffer } = createCofferServices();
writeFileSync('src/language/REFERENCE.md', languageReference(coffer));
writeFileSync('syntaxes/coffer.tmLanguage.json', tmLanguage(coffer.vocabulary));
writeFileSync('src/rules/REFERENCE.md', ruleReference(RULES));
for (const [file, text] of await kindPages()) writeFileSync(file, text);
for (const [file, text] of reportSchemas()) writeFileSync(`src/report/schema/${file}`, text);
for (const [file, text] of paneIconFiles()) writeFileSync(`syntaxes/icons/${file}`, text);
