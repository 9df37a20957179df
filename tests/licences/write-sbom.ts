/** `npm run sbom`: prints the bill of materials of what is shipped, in CycloneDX's format. */
import { join } from 'node:path';
import { shippedBill } from './shipped-bill.ts';

const bill = await shippedBill(join(import.meta.dirname, '../..'));
console.log(JSON.stringify(bill, undefined, 2));
