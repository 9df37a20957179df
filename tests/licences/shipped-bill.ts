/**
 * A bill of materials of what is shipped, as `npm sbom` makes it, without development's packages. (npm's own
 * `--omit=dev` leaves out what a development package needs as well, even when the program needs it too.)
 */
import { execFile } from 'node:child_process';
import { promisify } from 'node:util';

const DEVELOPMENT = 'cdx:npm:package:development';

interface Component {
  readonly 'bom-ref': string;
  readonly name: string;
  readonly version: string;
  readonly purl: string;
  readonly hashes?: readonly { readonly alg: string }[];
  readonly properties?: readonly { readonly name: string; readonly value: string }[];
}

/** The parts of a CycloneDX document that are read here; the others are kept as they are. */
interface Bill {
  readonly bomFormat: string;
  readonly components: readonly Component[];
  readonly dependencies: readonly { readonly ref: string; readonly dependsOn?: readonly string[] }[];
}

/** @param folder the project's */
export async function shippedBill(folder: string): Promise<Bill> {
  const args = ['sbom', '--sbom-format=cyclonedx', '--sbom-type=application'];
  const { stdout } = await promisify(execFile)('npm', args, { cwd: folder, maxBuffer: 64 * 1024 * 1024 });
  const whole = JSON.parse(stdout) as Bill;
  const isDevelopment = ({ properties }: Component): boolean =>
    properties?.some(({ name, value }) => name === DEVELOPMENT && value === 'true') ?? false;
  const left = new Set(whole.components.filter(isDevelopment).map((component) => component['bom-ref']));
  return {
    ...whole,
    components: whole.components.filter((component) => !left.has(component['bom-ref'])),
    dependencies: whole.dependencies
      .filter(({ ref }) => !left.has(ref))
      .map((entry) =>
        entry.dependsOn ? { ...entry, dependsOn: entry.dependsOn.filter((ref) => !left.has(ref)) } : entry,
      ),
  };
}
