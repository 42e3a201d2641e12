package sunup.sheets;

import java.util.Map;
import sunup.sheets.SheetEdit.Does;

/** Changes of drafts, for tests. */
public final class Edits {
  private Edits() {}

  /** Sets fields of an item. */
  public static SheetEdit change(String sheet, String key, Map<String, Object> fields) {
    return new SheetEdit(Does.CHANGE, sheet, key, fields, null, null);
  }

  /** Brings an item. */
  public static SheetEdit add(String sheet, String key, Map<String, Object> fields, String behind) {
    return new SheetEdit(Does.ADD, sheet, key, fields, behind, null);
  }

  /** Leaves an item out. */
  public static SheetEdit leaveOut(String sheet, String key) {
    return new SheetEdit(Does.LEAVE_OUT, sheet, key, null, null, null);
  }

  /** Leaves an item as it was found. */
  public static SheetEdit putBack(String sheet, String key) {
    return new SheetEdit(Does.PUT_BACK, sheet, key, null, null, null);
  }

  /** Puts an item behind another one. */
  public static SheetEdit move(String sheet, String key, String behind) {
    return new SheetEdit(Does.MOVE, sheet, key, null, behind, null);
  }

  /** A sheet, or with null all of them, as in an edition. */
  public static SheetEdit asIn(String sheet, int edition) {
    return new SheetEdit(Does.AS_IN, sheet, null, null, null, edition);
  }

  /** A sheet that is new. */
  public static SheetEdit addSheet(String sheet, Map<String, Object> head) {
    return new SheetEdit(Does.ADD_SHEET, sheet, null, head, null, null);
  }

  /** Sets fields of a sheet's head. */
  public static SheetEdit head(String sheet, Map<String, Object> head) {
    return new SheetEdit(Does.HEAD, sheet, null, head, null, null);
  }

  /** A whole sheet goes. */
  public static SheetEdit removeSheet(String sheet) {
    return new SheetEdit(Does.REMOVE_SHEET, sheet, null, null, null, null);
  }
}
