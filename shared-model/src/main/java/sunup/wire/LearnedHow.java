package sunup.wire;

/**
 * How people report here as this morning's forecasts take it, in words.
 *
 * @param what of it
 * @param first what they would go by if nothing had been learned
 * @param now what they go by
 * @param why what that rests on
 */
public record LearnedHow(String what, String first, String now, String why) {}
