/** Names that a job may hold, and that no page may take for anything but text. */
export const HOSTILE: readonly string[] = [
    '<script>document.title = "taken"</script>',
    '"><img src=x onerror="document.title = \'taken\'">',
    '</title></svg><svg onload=alert(1)>',
    '\' onmouseover=\'alert(1)',
    '{{constructor.constructor("alert(1)")()}} ${alert(1)} &lt;b&gt;',
    'W'.repeat(400),
    'שלום חדר אוכל (2)',
    'abc \u202egnp.exe\u202c \u2066x\u2069',
    '👩‍👩‍👧‍👦 Zimmer 🪵🔨 é\u0301\u0301\u0301\u0301\u0301',
    ']]> <!-- --> <![CDATA[',
];

/** Tags of a page that no page of ours holds: those that run, load or style something by themselves. Words in attributes are words. */
export function trespasses(markup: string): string[] {
    const tags = [...markup.matchAll(/<[a-z!/][^<>]*>/gi)].map(([tag]) => ({ tag, bare: tag.replace(/"[^"]*"/g, '""') }));
    // what is drawn once and shown again lies on the same page
    const others = tags.filter(({ tag }) => !/^<use href="#[\w-]+"( class="\w+")?\/>$/.test(tag));
    return others.filter(({ bare }) => /^<(script|img|iframe|object|embed|link|base|form)\b/i.test(bare) || /\s(on\w+|style|src|href)=/i.test(bare) || /['{}$]/.test(bare)).map(({ tag }) => tag);
}
