import { DefaultConfigurationProvider, type ConfigurationInitializedParams } from 'langium';
import type { DidChangeConfigurationParams, InitializeParams } from 'vscode-languageserver';

/** Which inlay hints are shown: `cofferwright.inlayHints.coffers` and so on. */
export interface HintSettings { readonly coffers: boolean; readonly beams: boolean; readonly fit: boolean; readonly pieces: boolean }
/** What holds where the editor has no settings. The number of pieces is off: the line above the room says it too. */
export const HINTS_BY_DEFAULT: HintSettings = { coffers: true, beams: true, fit: true, pieces: false };

const SECTION = 'cofferwright';
type Fetch = NonNullable<ConfigurationInitializedParams['fetchConfiguration']>;

/**
 * The settings as the editor has them. An editor may send them when they change, or wait to be asked, or have none; and
 * whatever it answers, nobody waits for settings in vain.
 */
export class Settings extends DefaultConfigurationProvider {
    private canRegister = false;
    private fetch: Fetch | undefined;

    override initialize(params: InitializeParams): void {
        super.initialize(params);
        this.canRegister = params.capabilities.workspace?.didChangeConfiguration?.dynamicRegistration ?? false;
    }

    override async initialized(params: ConfigurationInitializedParams): Promise<void> {
        const { register, fetchConfiguration, ...rest } = params;
        this.fetch = this.workspaceConfig ? fetchConfiguration : undefined;
        try {
            await super.initialized({ ...rest, ...this.canRegister && register && { register }, ...fetchConfiguration && { fetchConfiguration } });
        } finally {
            this._ready.resolve();
        }
    }

    override updateConfiguration(change: DidChangeConfigurationParams): void {
        const settings: unknown = change.settings;
        if (typeof settings === 'object' && settings !== null && SECTION in settings) super.updateConfiguration(change);
        else void this.askAgain();
    }

    /** Ready at once in an editor that has no settings, and in tests without one. */
    async hints(): Promise<HintSettings> {
        const said: unknown = this.fetch || this.settings[SECTION] ? await this.getConfiguration(SECTION, 'inlayHints') : undefined;
        return { ...HINTS_BY_DEFAULT, ...Object.fromEntries(Object.entries(said ?? {}).filter(([, value]) => typeof value === 'boolean')) };
    }

    private async askAgain(): Promise<void> {
        const [configuration] = await this.fetch?.([{ section: SECTION }]).catch(() => []) as unknown[] ?? [];
        if (configuration !== undefined) super.updateConfiguration({ settings: { [SECTION]: configuration } });
    }

    /** One section for the program, by its own name, not by that of the language. */
    protected override toSectionName(): string {
        return SECTION;
    }
}
