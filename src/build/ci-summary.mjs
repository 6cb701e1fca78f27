// The last lines of .ci/run: adds up what the steps left in a folder, and fails where anything failed or is missing.
// usage: node ci-summary.mjs FOLDER
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { stripVTControlCharacters } from 'node:util';

const folder = process.argv[2];
const names = [];
const unnamed = [];
const steps = readFileSync(join(folder, 'steps'), 'utf8').trim().split('\n').map(line => line.split(' '));
let passed = 0;
let failed = 0;
for (const [name, outcome] of steps) {
    const counted = counts(name);
    if (counted) {
        passed += counted.passed;
        failed += counted.failed;
        names.push(...counted.names.map(each => `${name}: ${each}`));
    } else if (outcome === 'passed') passed++;
    // a run can fail without a failing test: a file that does not load, a host that does not start
    if (outcome === 'failed' && !counted?.failed) {
        failed++;
        unnamed.push(name);
    }
    console.log(`${outcome === 'passed' ? 'passed' : 'FAILED'}  ${name}${counted ? `: ${counted.passed} passed, ${counted.failed} failed` : ''}`);
}
// last, where somebody who sees the end of a long log finds them
for (const name of unnamed) for (const line of lastLines(name)) console.log(`${name}| ${line}`);
for (const name of names.slice(0, 40)) console.log(`FAILED  ${name}`);
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed === 0 && passed > 0 ? 0 : 1;

/** How a step ended that failed without a failing test of a name: what it said last, without colors, past marks of tests that passed. */
function lastLines(step) {
    const path = join(folder, `${step}.log`);
    if (!existsSync(path)) return [];
    const lines = stripVTControlCharacters(readFileSync(path, 'utf8')).split('\n').map(line => line.trimEnd().slice(0, 300));
    return lines.filter(line => line.trim() !== '' && !/^\s*✓/.test(line)).slice(-16);
}

/** Single results of the steps that are suites of tests, and the names of those that failed. */
function counts(step) {
    const path = join(folder, `${step}.json`);
    if (!existsSync(path)) return undefined;
    const results = JSON.parse(readFileSync(path, 'utf8'));
    if ('numPassedTests' in results) {
        const { numPassedTests, numFailedTests, numPendingTests, numTodoTests, testResults } = results;
        // on a bare machine what needs more than Node and git is skipped, and says so; elsewhere nothing may be
        const isSkipped = step === 'bare' ? ({ status }) => status === 'pending' || status === 'skipped' : () => false;
        const skipped = step === 'bare' ? numPendingTests : 0;
        return {
            passed: numPassedTests, failed: numFailedTests + numPendingTests + numTodoTests - skipped,
            names: testResults.flatMap(file => namesIn({ ...file, assertionResults: file.assertionResults.filter(result => !isSkipped(result)) })),
        };
    }
    const failed = results.results.filter(({ ok }) => !ok);
    return { passed: results.results.length - failed.length, failed: failed.length, names: failed.map(({ name, error }) => `${name}: ${firstLine([error])}`) };
}

/** What did not pass in a file of tests. */
function namesIn({ name, assertionResults }) {
    return assertionResults.filter(({ status }) => status !== 'passed').map(({ status, fullName, failureMessages }) =>
        `${name.replace(`${process.cwd()}/`, '')}: ${fullName}: ${status === 'failed' ? firstLine(failureMessages) : status}`);
}

function firstLine(messages) {
    return String(messages?.[0] ?? '').split('\n')[0].slice(0, 300);
}
