package sunup.cluster;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import sunup.board.CommandId;
import sunup.board.MorningId;
import sunup.journal.Journal;
import sunup.journal.JournalCheck;
import sunup.journal.PostgresAddress;
import sunup.journal.PostgresJournal;
import sunup.journal.Receipt;
import sunup.journal.Stored;
import sunup.journal.Waiting;

/** Looks into the journal for what clients were told. */
final class Kept {
  private Kept() {}

  /** Every acknowledged command is there once, and the journal is whole. */
  static void check(PostgresAddress database, List<CommandId> acknowledged) throws Exception {
    try (Journal journal = PostgresJournal.open(database)) {
      List<MorningId> all = Waiting.known(Waiting.answer(journal::mornings));
      assertThat(all).hasSize(1);
      Stored stored = Waiting.known(Waiting.answer(t -> journal.load(all.get(0), t)));
      assertThat(JournalCheck.check(stored).problems()).isEmpty();
      assertThat(stored.receipts().stream().filter(r -> r.refusal() == null).map(Receipt::command))
          .doesNotHaveDuplicates()
          .containsAll(acknowledged);
    }
  }
}
