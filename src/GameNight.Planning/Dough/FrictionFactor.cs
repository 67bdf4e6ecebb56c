using GameNight.Planning.Quantities;

namespace GameNight.Planning.Dough;

/// <summary>
/// The friction factor of the handbook rule, in kelvins of the temperature sum: kneading warms the dough by a third of it,
/// or a quarter where a preferment counts. It is what a kitchen's kneading and bowl do, so one measured dough tells it.
/// </summary>
public static class FrictionFactor
{
    /// <summary>A cold bowl takes heat away; long machine kneading of a small batch gives 15 K (from memory).</summary>
    public const double Least = -10;
    public const double Most = 45;

    /// <param name="dough">Measured right after kneading.</param>
    /// <param name="water">As it went in.</param>
    /// <exception cref="ArgumentOutOfRangeException">The temperatures give a factor outside -10 to 45 K: one of them is wrong.</exception>
    public static double Learn(Celsius dough, Celsius flour, Celsius room, Celsius water, Celsius? preferment = null)
    {
        var factors = FactorsWith(preferment);
        // Rounded to what no thermometer shows: sums of temperatures leave a hair beyond a limit.
        var learned = Math.Round(factors * dough.Value - flour.Value - room.Value - water.Value - (preferment?.Value ?? 0), 9);
        return learned is >= Least and <= Most
            ? learned
            : throw new ArgumentOutOfRangeException(
                nameof(dough), learned, $"Friction is {Least} to {Most} K of the temperature sum.");
    }

    /// <summary>Temperatures that the rule adds up: flour, room, water, and the preferment where there is one.</summary>
    internal static int FactorsWith(Celsius? preferment) => preferment is null ? 3 : 4;
}
