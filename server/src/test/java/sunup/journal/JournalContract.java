package sunup.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static sunup.journal.Waiting.answer;
import static sunup.journal.Waiting.known;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import sunup.board.CommandId;
import sunup.board.MorningId;
import sunup.board.RefusalCode;

/** What every journal promises, whatever it stands on. */
public abstract class JournalContract {
  protected static final MorningId MONDAY = MorningId.parse("east/2026-11-30");
  protected static final MorningId TUESDAY = MorningId.parse("east/2026-12-01");

  protected Journal journal;

  /** A journal on the store of this test; the second one finds what the first one left. */
  protected abstract Journal open() throws Exception;

  @BeforeEach
  void begin() throws Exception {
    journal = open();
  }

  @AfterEach
  void end() {
    journal.close();
  }

  protected static Head won(TakenOver taken) {
    assertThat(taken).isInstanceOf(TakenOver.Won.class);
    return ((TakenOver.Won) taken).head();
  }

  protected Head takeOver(MorningId morning) {
    return won(answer(then -> journal.takeOver(morning, null, then)));
  }

  protected Stored load(MorningId morning) {
    return known(answer(then -> journal.load(morning, then)));
  }

  protected Appended append(Append append) {
    return answer(then -> journal.append(append, then));
  }

  protected static Bytes bytes(String text) {
    return Bytes.of(text.getBytes(StandardCharsets.UTF_8));
  }

  /** A command with as many events as words. */
  protected static Append command(MorningId morning, Head head, String id, String... words) {
    List<Bytes> events = new ArrayList<>();
    Head after = head;
    for (String word : words) {
      events.add(bytes(word));
      after = after.after(bytes(word));
    }
    Receipt receipt =
        new Receipt(new CommandId(id), bytes("hash of " + id), head.seq(), after.seq(), null);
    return new Append(morning, head.epoch(), head.seq(), after.chain(), events, receipt, List.of());
  }

  protected static Head after(Append append) {
    return new Head(append.epoch(), append.to(), append.chain());
  }

  @Test
  void shouldKnowNothingOfAMorningThatNobodyTookOver() {
    assertThat(load(MONDAY)).isEqualTo(new Stored(Head.NONE, List.of(), List.of(), Map.of()));
    assertThat(known(answer(journal::mornings))).isEmpty();
    assertThat(
            Waiting.<Answer<Map<MorningId, Long>>>answer(t -> journal.epochs(List.of(MONDAY), t)))
        .isEqualTo(new Answer.Known<>(Map.of()));
  }

  @Test
  void shouldGiveEveryTakeOverAnEpochOfItsOwn() {
    assertThat(takeOver(MONDAY)).isEqualTo(new Head(1, 0, Chain.START));
    assertThat(takeOver(MONDAY).epoch()).isEqualTo(2);
    assertThat(takeOver(TUESDAY).epoch()).isEqualTo(1);
    Answer<Map<MorningId, Long>> epochs =
        answer(then -> journal.epochs(List.of(MONDAY, TUESDAY), then));
    assertThat(known(epochs)).isEqualTo(Map.of(MONDAY, 2L, TUESDAY, 1L));
  }

  @Test
  void shouldNotGiveAMorningToOneWhoSawAnOlderEpoch() {
    takeOver(MONDAY);
    takeOver(MONDAY);
    TakenOver late = answer(then -> journal.takeOver(MONDAY, 1L, then));
    assertThat(late).isEqualTo(new TakenOver.Lost(2));
    assertThat(won(answer(then -> journal.takeOver(MONDAY, 2L, then))).epoch()).isEqualTo(3);
  }

  @Test
  void shouldGiveBackEventsInOrderWithTheirReceipts() throws Exception {
    Head head = takeOver(MONDAY);
    Append first = command(MONDAY, head, "a", "one", "two");
    Append none = command(MONDAY, after(first), "b");
    Append third = command(MONDAY, after(none), "c", "three");
    for (Append append : List.of(first, none, third)) {
      assertThat(append(append)).isEqualTo(new Appended.Durable());
    }
    journal.close();
    journal = open();
    Stored stored = load(MONDAY);
    assertThat(stored.events())
        .containsExactly(
            new Stored.Event(1, 1, bytes("one")),
            new Stored.Event(2, 1, bytes("two")),
            new Stored.Event(3, 1, bytes("three")));
    assertThat(stored.receipts())
        .containsExactlyInAnyOrder(first.receipt(), none.receipt(), third.receipt());
    assertThat(stored.head()).isEqualTo(after(third));
    assertThat(known(answer(journal::mornings))).containsExactly(MONDAY);
  }

  @Test
  void shouldGiveOnlyTheEventsAfterOneThatWasRead() throws Exception {
    Append first = command(MONDAY, takeOver(MONDAY), "a", "one", "two");
    Append second = command(MONDAY, after(first), "b", "three");
    append(first);
    append(second);
    Stored tail = known(answer(then -> journal.load(MONDAY, 2, then)));
    assertThat(tail.events()).containsExactly(new Stored.Event(3, 1, bytes("three")));
    assertThat(tail.head()).isEqualTo(after(second));
    assertThat(tail.receipts()).containsExactlyInAnyOrder(first.receipt(), second.receipt());
    tail = known(answer(then -> journal.load(MONDAY, 3, then)));
    assertThat(tail.events()).isEmpty();
  }

  @Test
  void shouldSayHowManyEventsEachMorningHas() {
    append(command(MONDAY, takeOver(MONDAY), "c-1", "one", "two"));
    takeOver(TUESDAY);
    assertThat(known(Waiting.<Answer<Map<MorningId, Long>>>answer(t -> journal.lengths(t))))
        .isEqualTo(Map.of(MONDAY, 2L));
  }

  @Test
  void shouldKeepARefusalInItsReceipt() {
    Head head = takeOver(MONDAY);
    Receipt refused =
        new Receipt(
            new CommandId("r"),
            bytes("h"),
            0,
            0,
            new Receipt.Refusal(
                RefusalCode.CHANGED_MEANWHILE, "It changed meanwhile.", "desk k1 at desk-1", 7));
    append(new Append(MONDAY, head.epoch(), 0, head.chain(), List.of(), refused, List.of()));
    assertThat(load(MONDAY).receipts()).containsExactly(refused);
  }

  @Test
  void shouldFenceAnOwnerWhoseEpochHasPassed() {
    Head old = takeOver(MONDAY);
    Head now = takeOver(MONDAY);
    assertThat(append(command(MONDAY, old, "late", "late"))).isEqualTo(new Appended.Fenced());
    assertThat(append(command(MONDAY, now, "mine", "mine"))).isEqualTo(new Appended.Durable());
    Stored stored = load(MONDAY);
    assertThat(stored.events()).containsExactly(new Stored.Event(1, 2, bytes("mine")));
    assertThat(stored.receipts()).hasSize(1);
  }

  @Test
  void shouldFenceAnAppendThatDoesNotFollow() {
    Head head = takeOver(MONDAY);
    Append first = command(MONDAY, head, "a", "one");
    append(first);
    assertThat(append(command(MONDAY, head, "b", "other"))).isEqualTo(new Appended.Fenced());
    Append gap = command(MONDAY, new Head(1, 5, Chain.START), "c", "gap");
    assertThat(append(gap)).isEqualTo(new Appended.Fenced());
    assertThat(load(MONDAY).events()).hasSize(1);
  }

  @Test
  void shouldFenceOneMorningWithoutHinderingAnother() {
    Head old = takeOver(MONDAY);
    takeOver(MONDAY);
    Head tuesday = takeOver(TUESDAY);
    List<CompletableFuture<Appended>> answers = new ArrayList<>();
    Append fine = command(TUESDAY, tuesday, "t1", "one");
    for (Append append :
        List.of(
            fine, command(MONDAY, old, "m1", "late"), command(TUESDAY, after(fine), "t2", "two"))) {
      CompletableFuture<Appended> told = new CompletableFuture<>();
      answers.add(told);
      journal.append(append, told::complete);
    }
    assertThat(answers.stream().map(Waiting::get))
        .containsExactly(new Appended.Durable(), new Appended.Fenced(), new Appended.Durable());
    assertThat(load(TUESDAY).events()).hasSize(2);
    assertThat(load(MONDAY).events()).isEmpty();
  }

  @Test
  void shouldWriteManyAppendsGivenAtOnceAndAnswerThemInOrder() {
    Head head = takeOver(MONDAY);
    List<Integer> order = new ArrayList<>();
    CompletableFuture<Appended> last = new CompletableFuture<>();
    int count = 600;
    for (int n = 0; n < count; n++) {
      Append append = command(MONDAY, head, "c" + n, "word " + n);
      head = after(append);
      int me = n;
      journal.append(
          append,
          outcome -> {
            assertThat(outcome).isEqualTo(new Appended.Durable());
            order.add(me);
            if (me == count - 1) {
              last.complete(outcome);
            }
          });
    }
    Waiting.get(last);
    assertThat(order).isSorted().hasSize(count);
    Stored stored = load(MONDAY);
    assertThat(stored.head()).isEqualTo(head);
    assertThat(JournalCheck.check(stored).problems()).isEmpty();
  }

  @Test
  void shouldEraseWhatIsDueAndKeepTheChain() {
    Head head = takeOver(MONDAY);
    Append append = command(MONDAY, head, "a", "one");
    PrivateValue due = new PrivateValue("r1", bytes("k1"), bytes("child, 4 years"), 1_000);
    PrivateValue later = new PrivateValue("r2", bytes("k2"), bytes("said so"), 2_000);
    append(
        new Append(
            MONDAY, 1, 0, append.chain(), append.events(), append.receipt(), List.of(due, later)));
    assertThat(load(MONDAY).privates()).isEqualTo(Map.of("r1", due, "r2", later));
    assertThat(known(erase(999))).isEmpty();
    assertThat(known(erase(1_000))).containsExactly(MONDAY);
    Stored stored = load(MONDAY);
    assertThat(stored.privates()).isEqualTo(Map.of("r2", later));
    assertThat(JournalCheck.check(stored).problems()).isEmpty();
  }

  private Answer<Set<MorningId>> erase(long now) {
    return answer(then -> journal.erase(now, then));
  }

  @Test
  void shouldRefuseEverythingOnceItIsClosed() throws Exception {
    Head head = takeOver(MONDAY);
    journal.close();
    assertThat(append(command(MONDAY, head, "a", "one"))).isInstanceOf(Appended.NotWritten.class);
    TakenOver taken = answer(then -> journal.takeOver(MONDAY, null, then));
    assertThat(taken).isInstanceOf(TakenOver.Away.class);
    Answer<Stored> stored = answer(then -> journal.load(MONDAY, then));
    assertThat(stored).isInstanceOf(Answer.Away.class);
    journal = open();
    assertThat(load(MONDAY).events()).isEmpty();
  }
}
