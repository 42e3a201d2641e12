package sunup.wire;

/**
 * A duration that this morning goes by instead of its sheet's, in minutes.
 *
 * @param item as the desk has it
 * @param sheetUsual what the sheet says it usually takes
 * @param sheetOneInTen and what one in ten takes longer than
 * @param usual what the forecasts of this morning go by
 * @param oneInTen the same for one in ten
 * @param measured on how many durations that rests
 */
public record LearnedTime(
    String item,
    double sheetUsual,
    double sheetOneInTen,
    double usual,
    double oneInTen,
    int measured) {}
