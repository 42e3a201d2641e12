package sunup.live;

/**
 * How often a morning is drawn, and how much of it is kept for screens that come back. Listed in
 * {@code PROTOCOL.md}.
 *
 * @param frameMs least real time between two frames
 * @param beatMs real time between two heartbeats
 * @param confirmedMs age of the journal's confirmation beyond which there is no heartbeat
 * @param gridMs morning time between two forecasts when nothing happens
 * @param gridRealMsMin least real time between them, for rehearsals
 * @param figuresMs real time without new ones after which figures are called old
 * @param ringMs real time for which frames are kept
 * @param ringFramesMax frames kept an audience
 * @param ringBytesMax bytes of frames kept an audience
 * @param trialsFirst trials of the answer at once
 * @param trialsFull trials when nothing newer waits
 */
public record Pace(
    int frameMs,
    int beatMs,
    int confirmedMs,
    int gridMs,
    int gridRealMsMin,
    int figuresMs,
    int ringMs,
    int ringFramesMax,
    int ringBytesMax,
    int trialsFirst,
    int trialsFull) {
  public static final Pace DEFAULT =
      new Pace(50, 1_000, 2_000, 10_000, 250, 30_000, 60_000, 1_200, 4 * 1024 * 1024, 256, 2_000);
}
