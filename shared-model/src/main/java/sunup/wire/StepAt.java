package sunup.wire;

import sunup.board.Step;

/** When a step was reached. */
public record StepAt(Step step, long at) {}
