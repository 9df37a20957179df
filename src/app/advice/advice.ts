/**
 * The planning questions and what is answered to them, as data; views turn it into words, charts into a picture.
 * Every answer holds its evidence and what it does not know.
 */
import type { CommitmentRange } from '../../forecast/commitment-range.ts';
import type { ControlChart } from '../../forecast/control-chart.ts';
import type { ChanceBounds, JointDate } from '../../forecast/joint-release.ts';
import type { MarginOfError } from '../../forecast/margin-of-error.ts';
import type { ReleaseByDay } from '../../forecast/release-by-day.ts';
import type { ReleaseForecast } from '../../forecast/release-forecast.ts';
import type { SurpriseOddsBySize } from '../../forecast/surprise-odds.ts';
import type { Growth } from '../../forecast/value-growth.ts';
import type { PastBaseline } from '../../sprint/baseline.ts';
import type { Day } from '../../sprint/calendar.ts';
import type { RatioId } from '../../sprint/sprint-ratios.ts';
import type { Thresholds } from '../../sprint/thresholds.ts';
import type { Ratio, UndefinedValue } from '../../sprint/undefined-value.ts';
import type { VerdictRules } from '../../sprint/verdict.ts';
import type { BodyOfWork, ToldDates } from '../bodies/body-of-work.ts';
import type { PastSprint } from '../history/past-sprint.ts';
import type { Team } from '../team/team.ts';

/**
 * What was asked. It travels in buttons and is kept with shared posts, so it holds plain JSON only. A day is as it was typed
 * until the question is read.
 */
export type AdviceQuestion =
  | { readonly about: 'odds' }
  | {
      readonly about: 'range';
      /** The coming sprint; undefined: like the latest one, from the next working day that is free. */
      readonly startsOn?: Day | undefined;
      readonly endsOn?: Day | undefined;
      /** Working days that members will be away or off, all members together, recorded ones among them. */
      readonly awayDays?: number | undefined;
      /** Asks also for the chances of a commitment of so many points. */
      readonly points?: number | undefined;
    }
  | {
      readonly about: 'forecast';
      /** Undefined: asks how much is finished by `byDay`. */
      readonly backlogPoints?: number | undefined;
      /** Points by which the body of work grows with each sprint; undefined: as much as measured so far. */
      readonly growthPoints?: number | undefined;
      /** With it: in 8 of 10 cases the growth lies between the two. */
      readonly growthMostPoints?: number | undefined;
      /** How much of what the sprints finish is work on it, in percent; undefined: all of it. */
      readonly sharePercent?: number | undefined;
      /** Asks also for the chance by this day, and for how much is finished by it. */
      readonly byDay?: Day | undefined;
    }
  | { readonly about: 'history' }
  /** The bodies of work that the team keeps by name. */
  | { readonly about: 'kept' };

interface AdviceBase {
  readonly team: Pick<Team, 'id' | 'name' | 'channelId' | 'timeZone'>;
  /** The team's day on which it was asked. */
  readonly on: Day;
  /** Closed sprints that are known, and how many of them were imported. */
  readonly sprints: number;
  readonly importedSprints: number;
  /** Whether the one who asked may plan a sprint next; undefined where nobody asked: in a post, beside a plan. */
  readonly askerIsFacilitator?: boolean;
}

export interface OddsAdvice extends AdviceBase {
  readonly question: Extract<AdviceQuestion, { about: 'odds' }>;
  readonly odds: SurpriseOddsBySize | UndefinedValue;
  /** Sprints whose cards are known. */
  readonly sprintsWithCards: number;
}

/** The sprint that the range is for. */
export interface ComingSprint {
  readonly startsOn: Day;
  readonly endsOn: Day;
  readonly workingDays: number;
  readonly members: number;
  /** By the calendars of team and members. */
  readonly memberDays: number;
  /** Days off and away that somebody names beyond those; undefined when nobody did. */
  readonly awayDays: number | undefined;
}

export interface RangeAdvice extends AdviceBase, VerdictRules {
  readonly question: Extract<AdviceQuestion, { about: 'range' }>;
  readonly coming: ComingSprint;
  readonly range: CommitmentRange | UndefinedValue;
  /** The closed sprints that the range is made from, oldest first; for the chart and the evidence. */
  readonly past: readonly PastSprint[];
  readonly thresholds: Thresholds;
}

/** By how much the work grows with each sprint, in points, and how that is known. */
export interface ScopeGrowth {
  readonly points: number;
  /** In 8 of 10 cases it lies between these; undefined where it is taken to be known. */
  readonly span: { readonly low: number; readonly high: number } | undefined;
  /** From how many sprints it was measured; undefined: as it was said; 0: not known, and taken to be none. */
  readonly measuredSprints: number | undefined;
}

/** An answer below which work can be kept. */
interface KeepingAdvice extends AdviceBase {
  /** Whether the one who asked may keep bodies of work; undefined where nobody asked. */
  readonly askerMayKeep?: boolean;
}

export interface ForecastAdvice extends KeepingAdvice {
  readonly question: Extract<AdviceQuestion, { about: 'forecast' }>;
  /** The first day of the first sprint that will work on it, and the days from sprint to sprint. */
  readonly startsOn: Day;
  readonly sprintLengthDays: number;
  /** Undefined for its reason also where nobody said how much work it is. */
  readonly forecast: ReleaseForecast | UndefinedValue;
  readonly growth: ScopeGrowth;
  /** Undefined where no day was asked about. */
  readonly byDay: ReleaseByDay | UndefinedValue | undefined;
  readonly margin: MarginOfError;
}

/** One ratio over the closed sprints. */
export interface RatioHistory {
  readonly ratio: RatioId;
  /** One a sprint, in the order of `past`. */
  readonly values: readonly Ratio[];
  /** The lines that call for a note when crossed; undefined where there is none. */
  readonly floor: number | undefined;
  readonly ceiling: number | undefined;
  /** Lines that are good to reach (velocity growth). */
  readonly marks: readonly number[];
  readonly chart: ControlChart | UndefinedValue;
  /** Places in `values` at which a floor or ceiling was crossed. */
  readonly crossedAt: readonly number[];
}

/** Numbers of sprints. */
export interface GoalsMet {
  readonly sprints: number;
  readonly met: number;
  readonly partly: number;
  /** Those of the same sprints that were kept. */
  readonly kept: number;
}

export interface HistoryAdvice extends AdviceBase {
  readonly question: Extract<AdviceQuestion, { about: 'history' }>;
  /** Oldest first. */
  readonly past: readonly PastSprint[];
  readonly ratios: readonly RatioHistory[];
  /** What velocity growth is measured by; undefined when there is nothing yet. */
  readonly velocityBaseline: PastBaseline | undefined;
  /** Of the closed sprints in which it is known whether their goal was met; undefined when there are none. */
  readonly goals: GoalsMet | undefined;
  /** Growth of the recorded value beside that of velocity, one a sprint; undefined where none was recorded. */
  readonly growth: readonly Growth[] | undefined;
  readonly margin: MarginOfError;
}

/** A body of work that is kept, and when it is finished. */
export interface ForecastBody {
  readonly body: BodyOfWork;
  readonly forecast: ReleaseForecast | UndefinedValue;
  readonly growth: ScopeGrowth;
  /** Sprints that have closed since somebody said how much is left. */
  readonly sprintsSinceSaid: number;
}

export interface KeptAdvice extends KeepingAdvice {
  readonly question: Extract<AdviceQuestion, { about: 'kept' }>;
  /** As in `ForecastAdvice`. */
  readonly startsOn: Day;
  readonly sprintLengthDays: number;
  /** Those still to do, in their order, with what was told of them so far, the earliest first. */
  readonly bodies: readonly (ForecastBody & { readonly told: readonly ToldDates[] })[];
  /** The latest of those that are done, the latest first. */
  readonly done: readonly { readonly body: BodyOfWork; readonly told: readonly ToldDates[] }[];
}

export type Advice = OddsAdvice | RangeAdvice | ForecastAdvice | HistoryAdvice | KeptAdvice;

/** Of parts that several teams do, about all of them together only; it is no answer of one team. */
export interface JointAdvice {
  readonly question: { readonly about: 'joint' };
  /** Where it was asked. */
  readonly team: Pick<Team, 'id' | 'name' | 'channelId' | 'timeZone'>;
  readonly on: Day;
  /** What the body of work is called. */
  readonly name: string;
  /** Names of the teams whose parts it is about, two at least. */
  readonly teamNames: readonly string[];
  /** Of those that say what is left of their part by a number from before their latest sprint closed. */
  readonly staleTeamNames: readonly string[];
  /** Of those whose part can't be forecast yet. */
  readonly unknownTeamNames: readonly string[];
  /** Undefined while a part can't be forecast. */
  readonly joint:
    | {
        readonly dates: readonly [even: JointDate, promised: JointDate];
        readonly curve: readonly (ChanceBounds & { readonly on: Day })[];
      }
    | undefined;
}
