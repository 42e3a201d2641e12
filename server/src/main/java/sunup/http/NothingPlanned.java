package sunup.http;

import java.util.List;
import sunup.board.Morning;
import sunup.board.MorningId;
import sunup.board.Step;
import sunup.forecast.Forecast;
import sunup.live.Sight;
import sunup.wire.Part;

/** Stands in until the outlook is there. */
final class NothingPlanned implements Sight {
  @Override
  public Forecast forecast(Morning state, long now, int trials) {
    return null;
  }

  @Override
  public Seen see(MorningId morning, Object before, Morning state, Forecast forecast, long now) {
    return new Seen(
        null,
        List.of(
            new Part.SuitePart(
                "suite",
                "Sunup",
                morning.suite().value(),
                morning.date().toString(),
                "UTC",
                "none",
                Step.WHEELS_IN,
                0,
                null,
                0,
                0,
                0,
                false,
                true)));
  }
}
