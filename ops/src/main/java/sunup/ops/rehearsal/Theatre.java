package sunup.ops.rehearsal;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sunup.board.CasePlan;
import sunup.board.RoomId;
import sunup.board.Section;
import sunup.board.Step;
import sunup.sheets.ComposedSheet;
import sunup.sheets.SheetItem;

/** A room of the simulated hospital with its first case. */
final class Theatre {
  private static final long MINUTE = 60_000;

  final RoomId id;
  final CasePlan plan;
  final Step startEvent;
  final List<Job> jobs = new ArrayList<>();
  final Map<String, Job> byKey = new LinkedHashMap<>();
  final List<Worker> own = new ArrayList<>();

  /** Booked, or agreed from the moment of the agreement. */
  long target;

  /** Until when nothing can be done in the room itself. */
  long usableFrom = Long.MIN_VALUE;

  Theatre(CasePlan plan, ComposedSheet sheet, Step startEvent) {
    this.id = plan.room();
    this.plan = plan;
    this.startEvent = startEvent;
    this.target = plan.bookedAt();
    for (SheetItem item : sheet.items()) {
      Job job = new Job(this, item);
      jobs.add(job);
      byKey.put(item.key(), job);
    }
  }

  boolean good(String key) {
    Job job = byKey.get(key);
    return job == null || job.state == Job.State.GOOD;
  }

  boolean allGating(Step step) {
    for (Job job : jobs) {
      if (step == job.item.gates() && job.state != Job.State.GOOD) {
        return false;
      }
    }
    return true;
  }

  boolean reached(Step step) {
    for (Job job : jobs) {
      if (job.item.marks() == step) {
        return job.state == Job.State.GOOD;
      }
    }
    return false;
  }

  /** Usual minutes of the start chain from this job's beginning to the start event. */
  long usualToStart(Job from) {
    double minutes = 0;
    boolean counting = false;
    for (Job job : jobs) {
      counting |= job == from;
      if (counting && job.item.section() == Section.START) {
        minutes += job.item.hands().usual();
      }
      if (job.item.marks() == startEvent) {
        return counting ? Math.round(minutes * MINUTE) : 0;
      }
    }
    return 0;
  }

  /** True if the item is worked on inside the room. */
  static boolean inRoom(SheetItem item) {
    Section s = item.section();
    return item.place() == null && (s.isSetUp() || s == Section.ROOM || s == Section.START);
  }
}
