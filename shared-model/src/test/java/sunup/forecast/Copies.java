package sunup.forecast;

import java.util.List;
import sunup.forecast.Forecast.ItemOut;
import sunup.forecast.Forecast.RoomOut;
import sunup.forecast.Forecast.Share;
import sunup.forecast.ForecastInput.ItemIn;
import sunup.forecast.ForecastInput.KindIn;
import sunup.forecast.ForecastInput.PersonIn;
import sunup.forecast.ForecastInput.Progress;
import sunup.forecast.ForecastInput.RoomIn;

/** Inputs and outputs of a forecast with something else in them. */
final class Copies {
  private Copies() {}

  static ForecastInput with(
      ForecastInput in, List<PersonIn> people, List<KindIn> kinds, List<RoomIn> rooms) {
    return new ForecastInput(
        in.version(),
        in.now(),
        in.seed(),
        in.trials(),
        in.settings(),
        people,
        kinds,
        in.places(),
        rooms);
  }

  static RoomIn withItems(RoomIn r, List<ItemIn> items) {
    return room(r, r.target(), r.occupiedFor(), r.startedAt(), items);
  }

  static RoomIn started(RoomIn r, Long startedAt) {
    return started(r, startedAt, r.items());
  }

  /** A room that is free and has started, or not if that is null. */
  static RoomIn started(RoomIn r, Long startedAt, List<ItemIn> items) {
    return room(r, r.target(), null, startedAt, items);
  }

  /** A room that aims at another time. */
  static RoomIn aiming(RoomIn r, long target) {
    return room(r, target, r.occupiedFor(), r.startedAt(), r.items());
  }

  private static RoomIn room(
      RoomIn r, long target, Draw occupiedFor, Long startedAt, List<ItemIn> items) {
    return new RoomIn(
        r.id(), r.caseId(), target, r.startStep(), r.begins(), occupiedFor, startedAt, items);
  }

  /** An item that lapses, if the step that it gates is not begun. */
  static ItemIn living(ItemIn i, String gates, long lifeMs) {
    return item(i, gates, i.notBefore(), lifeMs, i.progress(), i.who());
  }

  static ItemIn with(ItemIn i, Progress progress) {
    return with(i, i.notBefore(), progress, i.who());
  }

  static ItemIn with(ItemIn i, Long notBefore, Progress progress, List<List<String>> who) {
    return item(i, i.gates(), notBefore, i.lifeMs(), progress, who);
  }

  private static ItemIn item(
      ItemIn i,
      String gates,
      Long notBefore,
      Long lifeMs,
      Progress progress,
      List<List<String>> who) {
    return new ItemIn(
        i.key(),
        i.section(),
        i.ofCase(),
        who,
        i.hands(),
        i.waits(),
        i.extra(),
        i.after(),
        gates,
        i.marks(),
        notBefore,
        i.place(),
        i.inRoom(),
        i.needs(),
        i.arrival(),
        lifeMs,
        progress,
        i.asked());
  }

  static RoomOut with(RoomOut r, List<Share> holdups, List<ItemOut> items) {
    return new RoomOut(
        r.id(),
        r.onTime(),
        r.start10(),
        r.start50(),
        r.start90(),
        r.could10(),
        r.could50(),
        r.could90(),
        r.meanLateMs(),
        r.capped(),
        r.kept(),
        r.tried(),
        holdups,
        r.alreadyLost(),
        items);
  }
}
