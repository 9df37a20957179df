/** What the use cases need to have drawn. */
import type { Burndown } from '../../sprint/burndown.ts';
import type {
  ForecastAdvice,
  HistoryAdvice,
  JointAdvice,
  KeptAdvice,
  OddsAdvice,
  RangeAdvice,
} from '../advice/advice.ts';

export interface Picture {
  readonly png: Uint8Array;
  readonly altText: string;
}

export interface Charts {
  burndown(burndown: Burndown): Promise<Picture>;
  odds(advice: OddsAdvice): Promise<Picture>;
  range(advice: RangeAdvice): Promise<Picture>;
  forecast(advice: ForecastAdvice): Promise<Picture>;
  history(advice: HistoryAdvice): Promise<Picture>;
  kept(advice: KeptAdvice): Promise<Picture>;
  joint(advice: JointAdvice): Promise<Picture>;
}
