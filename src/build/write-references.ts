import { writeFileSync } from 'node:fs';
import { languageReference } from '../language/reference.ts';
import { createCofferServices } from '../language/services.ts';
import { RULES } from '../rules/index.ts';
import { ruleReference } from '../rules/reference.ts';
import { reportSchemas } from './report-schemas.ts';

writeFileSync('src/language/REFERENCE.md', languageReference(createCofferServices().coffer));
writeFileSync('src/rules/REFERENCE.md', ruleReference(RULES));
for (const [file, text] of reportSchemas()) writeFileSync(`src/report/schema/${file}`, text);
