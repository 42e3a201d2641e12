package sunup.archive;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import sunup.board.MorningId;
import sunup.codec.Json;
import sunup.review.facts.ForecastNote;

/** Forecasts that were made again for moments that the board kept nothing of, by morning. */
final class RemadeTable {
  private RemadeTable() {}

  static void make(Connection c) throws SQLException {
    try (Statement s = c.createStatement()) {
      s.execute(
          "CREATE TABLE remade (suite VARCHAR NOT NULL, day INTEGER NOT NULL, body VARCHAR NOT"
              + " NULL)");
    }
  }

  /** Within the caller's transaction. */
  static void put(Connection c, MorningId morning, List<ForecastNote> notes) throws SQLException {
    try (PreparedStatement s =
        c.prepareStatement("DELETE FROM remade WHERE suite = ? AND day = ?")) {
      of(s, morning);
      s.executeUpdate();
    }
    try (PreparedStatement s =
        c.prepareStatement("INSERT INTO remade (suite, day, body) VALUES (?, ?, ?)")) {
      of(s, morning);
      s.setString(3, Json.write(notes));
      s.executeUpdate();
    }
  }

  static List<ForecastNote> of(Connection c, MorningId morning) throws SQLException {
    try (PreparedStatement s =
        c.prepareStatement("SELECT body FROM remade WHERE suite = ? AND day = ?")) {
      of(s, morning);
      try (ResultSet row = s.executeQuery()) {
        return row.next()
            ? Json.mapper().readValue(row.getString(1), new TypeReference<List<ForecastNote>>() {})
            : List.of();
      }
    } catch (JsonProcessingException e) {
      throw new SQLException("the forecasts of a morning can't be read", e);
    }
  }

  private static void of(PreparedStatement s, MorningId morning) throws SQLException {
    s.setString(1, morning.suite().value());
    s.setInt(2, (int) morning.date().toEpochDay());
  }
}
