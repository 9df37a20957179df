/** What teams try, in the store. */
import type { Experiment } from '../experiments/experiment.ts';

export interface ExperimentReading {
  /** All of the team's, in the order in which they began. */
  experimentsOf(teamId: string): Promise<Experiment[]>;
  teamIdOfExperiment(experimentId: string): Promise<string | undefined>;
}

export interface ExperimentWriting {
  begin(experiment: Experiment): Promise<void>;
  end(experimentId: string, ended: NonNullable<Experiment['ended']>): Promise<void>;
}
