package sunup.bedside;

import sunup.units.Numbers;

/**
 * A flow of gas.
 *
 * @param litresPerMinute above 0: at no flow a cylinder lasts for ever, which is no answer
 */
public record Flow(double litresPerMinute) {
  public Flow {
    Numbers.above0(litresPerMinute, "flow");
  }
}
