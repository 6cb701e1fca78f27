import { createGenerator, type Schema } from 'ts-json-schema-generator';

/** What is printed as JSON: the name of its schema, and the type it is made from, in `src/report/…/shape.ts`. */
const SHAPES: Readonly<Record<string, string>> = {
    suggest: 'SuggestionsJson', bench: 'BenchJson',
    boards: 'BoardsJson', changes: 'ChangesJson', 'cut-list': 'CutListJson', 'dry-fit': 'DryFitJson', estimate: 'EstimatesJson', findings: 'FindingsJson', invoice: 'InvoicesJson', joists: 'JoistsJson', measure: 'MeasureJson', order: 'OrderJson', 'put-up': 'PutUpJson', saw: 'SawJson', seasons: 'SeasonsJson', survey: 'SurveyJson', trades: 'TradesJson', walls: 'WallsJson',
};
const PROMISE = 'Within a version properties may be added; none changes its meaning or goes away.';

/** The published JSON schemas by file name, as they are written into `src/report/schema`. Run in the repository's root. */
export function reportSchemas(): Map<string, string> {
    const generator = createGenerator({ path: 'src/report/*/shape.ts', tsconfig: 'tsconfig.json', expose: 'export', topRef: false, skipTypeCheck: true, additionalProperties: true, encodeRefs: false });
    return new Map(Object.entries(SHAPES).map(([name, type]) =>
        [`${name}.schema.json`, `${JSON.stringify(published(name, generator.createSchema(type)), null, 2)}\n`]));
}

function published(name: string, { $schema, title, description, definitions = {}, ...root }: Schema) {
    const write = writer(definitions);
    const own = Object.entries(definitions).filter(([type]) => isNamed(type)).map(([type, schema]) => [nameOf(type), write(schema)] as const);
    return {
        $schema, $id: `urn:cofferwright:schema:${name}:1`, title, description: `${oneLine(description!)} ${PROMISE}`,
        ...write(root) as object,
        ...own.length > 0 && { definitions: Object.fromEntries(own.sort(([a], [b]) => (a < b ? -1 : 1))) },
    };
}

/** A type called `…Json` is a definition of its own; any other is written where it is used. */
const isNamed = (type: string): boolean => /^\w+Json$/.test(type);
const nameOf = (type: string): string => type[0]!.toLowerCase() + type.slice(1, -'Json'.length);
const oneLine = (text: string): string => text.replace(/\s*\n\s*/g, ' ');

/** The generator's schema in the plain words of JSON Schema that ours are written in. */
function writer(definitions: NonNullable<Schema['definitions']>): (schema: unknown) => unknown {
    const write = (schema: unknown): unknown => {
        if (Array.isArray(schema)) return schema.map(write);
        if (!isRecord(schema)) return schema;
        if (typeof schema.$ref === 'string') return referred(schema as Record<string, unknown> & { $ref: string });
        const { description, type, required, properties, items, anyOf, additionalProperties: _, ...rest } = schema;
        return {
            ...description !== undefined && { description: oneLine(description as string) },
            // the values say what type they are of
            ...type !== undefined && !('enum' in rest || 'const' in rest) && { type },
            ...required !== undefined && { required },
            ...properties !== undefined
                && { properties: Object.fromEntries(Object.entries(properties as object).map(([name, value]) => [name, write(value)])) },
            ...items !== undefined && { items: write(alike(items)) },
            ...anyOf !== undefined && orNull((anyOf as unknown[]).map(write)),
            ...rest,
        };
    };
    const referred = ({ $ref, ...beside }: Record<string, unknown> & { $ref: string }): unknown => {
        const type = $ref.slice('#/definitions/'.length);
        if (!isNamed(type)) {
            const { description: _, ...inPlace } = definitions[type] as Record<string, unknown>;     // it says what the type is to the program
            return write({ ...inPlace, ...beside });
        }
        const plain = { $ref: `#/definitions/${nameOf(type)}` };
        // what stands beside a `$ref` does not count in draft 7
        return Object.keys(beside).length === 0 ? plain : { ...write(beside) as object, allOf: [plain] };
    };
    return write;
}

/** A tuple of one kind of things is an array of them; its length is said beside it. */
function alike(items: unknown): unknown {
    if (!Array.isArray(items)) return items;
    const kinds = new Set(items.map(item => JSON.stringify(item)));
    return kinds.size === 1 ? items[0] : items;
}

/** A number that may be missing is `type: [number, null]`. */
function orNull(anyOf: unknown[]): Record<string, unknown> {
    const [one, none] = anyOf;
    const isPlain = anyOf.length === 2 && isRecord(one) && typeof one.type === 'string' && one.type !== 'object' && isRecord(none) && none.type === 'null';
    return isPlain ? { ...one, type: [one.type, 'null'] } : { anyOf };
}

function isRecord(value: unknown): value is Record<string, unknown> {
    return typeof value === 'object' && value !== null && !Array.isArray(value);
}
