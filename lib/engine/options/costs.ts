import type { MotorScope } from '../context';
import { apply, leaf } from '../formula/apply';
import * as $ from '../generated/money';
import type { Plate } from '../motor';
import type { Finding } from '../quantity/finding';
import { exact, type Quantity } from '../quantity/quantity';
import type { Price } from '../settings';
import { OPTIONS } from './findings';
import { frameSeries, plainFrame, standardFrame } from './frames';
import { listedPrice } from './price';

/** An outlay with the part that is the machine itself. */
export interface Outlay {
  readonly machine: Quantity<'currency'>;
  readonly installed: Quantity<'currency'>;
  /** The same for the next machine in its place: what fits it to the place is there. */
  readonly again: Quantity<'currency'>;
  /** The line of the list with this very rating. */
  readonly line?: Price | undefined;
}

/** Finds prices for one motor; remembers what it had to say about them, each once. */
export class Costs {
  readonly findings: Finding[] = [];
  readonly #said = new Set<string>();
  readonly #scope: MotorScope;
  readonly #plate: Plate;
  readonly #poles: number;

  constructor(scope: MotorScope, plate: Plate, poles: number) {
    this.#scope = scope;
    this.#plate = plate;
    this.#poles = poles;
  }

  /** A premium motor of a rating, installed; the quotation serves at the present rating alone. */
  motor(ratedPowerKw: number): Outlay | undefined {
    const quoted = ratedPowerKw === this.#plate.ratedPowerKw ? this.#plate.quotedPrice : undefined;
    const listed = quoted === undefined ? this.#listed('motor', ratedPowerKw) : undefined;
    const machine = quoted === undefined ? listed?.price : this.#quoted('quoted_price', quoted);
    if (!machine) {
      this.#say('no-price', () => OPTIONS.make('no-price', { rated_power_kw: ratedPowerKw }));
      return undefined;
    }
    return this.#installed(machine, ratedPowerKw, this.#needsAdapter(ratedPowerKw), listed?.line);
  }

  /** A repair at a rating; `quotation` says that the quotation of the sheet is for this one. */
  repair(item: 'rewind' | 'bearing-job', ratedPowerKw: number, quotation: boolean): Outlay | undefined {
    const quoted = quotation ? this.#plate.quotedRepair : undefined;
    if (quoted !== undefined) return this.#installed(this.#quoted('quoted_repair', quoted), ratedPowerKw, false);
    const found = this.listedRepair(item, ratedPowerKw);
    if (!found) this.#say('no-repair-price', () => OPTIONS.make('no-repair-price', { rated_power_kw: ratedPowerKw }));
    return found;
  }

  /** A repair as listed, without a finding when the list has none. */
  listedRepair(item: 'rewind' | 'bearing-job', ratedPowerKw: number): Outlay | undefined {
    const listed = this.#listed(item, ratedPowerKw);
    return listed && this.#installed(listed.price, ratedPowerKw, false);
  }

  #installed(machine: Quantity<'currency'>, ratedPowerKw: number, adapter: boolean, line?: Price): Outlay {
    const removal_install = this.#extra('removal-install', ratedPowerKw);
    const withAdapter = (price: Quantity<'currency'>) =>
      apply(this.#scope, $.installed_cost, { machine, removal_install, adapter: price });
    const again = withAdapter(exact(0, 'currency'));
    const installed = adapter ? withAdapter(this.#extra('frame-adapter', ratedPowerKw)) : again;
    return { machine, line, installed, again };
  }

  #extra(item: 'removal-install' | 'frame-adapter', ratedPowerKw: number): Quantity<'currency'> {
    const listed = this.#listed(item, ratedPowerKw);
    if (listed) return listed.price;
    this.#say(`price-incomplete ${item}`, () => OPTIONS.make('price-incomplete', { item }));
    return exact(0, 'currency');
  }

  #listed(item: Price['item'], ratedPowerKw: number): { price: Quantity<'currency'>; line?: Price | undefined } | undefined {
    const list = this.#scope.prices;
    const found = listedPrice(list, {
      item,
      ratedPowerKw,
      poles: this.#poles,
      enclosure: this.#plate.enclosure ?? 'enclosed',
    });
    if (!found) return undefined;
    if (list.invented) this.#say('invented-price', () => OPTIONS.make('invented-price', {}));
    if (found.extrapolated)
      this.#say(`price-extrapolated ${item}`, () => OPTIONS.make('price-extrapolated', { item, rated_power_kw: ratedPowerKw }));
    return { price: leaf(this.#scope, found.leaf), line: found.line };
  }

  #quoted(column: string, value: number): Quantity<'currency'> {
    return leaf(this.#scope, { value, unit: 'currency', label: column, origin: 'stamped', source: `fleet sheet, ${column}` });
  }

  #needsAdapter(ratedPowerKw: number): boolean {
    const { frame, ratedPowerKw: present } = this.#plate;
    const old = frame === undefined ? undefined : plainFrame(frame);
    if (ratedPowerKw === present) return old !== undefined && /^\d{3}U/.test(old);
    const series = frameSeries(frame, this.#scope.settings.standards);
    const size = { poles: this.#poles, enclosure: this.#plate.enclosure ?? 'enclosed', series } as const;
    const next = standardFrame(this.#scope.tables, ratedPowerKw, size);
    const now = old ?? standardFrame(this.#scope.tables, present, size);
    // Where the tables do not tell, another rating is taken to need an adapter.
    return next === undefined || now === undefined || next !== now;
  }

  /** Takes up a finding that concerns the choice as a whole, once for each code. */
  say(finding: Finding): void {
    this.#say(finding.code, () => finding);
  }

  /** The same of much is said at nearly every price, and making a finding takes longer than finding the price. */
  #say(key: string, make: () => Finding): void {
    if (this.#said.has(key)) return;
    this.#said.add(key);
    this.findings.push(make());
  }
}
