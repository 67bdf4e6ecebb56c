using GameNight.Planning.Quantities;
using GameNight.Planning.Reference;
using NodaTime;

namespace GameNight.Planning.Safety;

public sealed record CautionRow(CautionKind Caution, string Authority, string Source);

/// <summary>How long what was on the table may stand, in a room and in a hot one.</summary>
public sealed record HoldingRow(double Hours, double HotHours, double HotAboveCelsius, string Source)
{
    public Duration LongestIn(Celsius room) => Duration.FromHours(room.Value > HotAboveCelsius ? HotHours : Hours);
}

/// <summary>Cautions, each with the authority that it defers to.</summary>
public sealed record SafetyTable(
    IReadOnlyList<CautionRow> Cautions, HoldingRow Holding, ValidRange OvenAirCelsius, ValidRange FridgeCelsius)
{
    internal const string File = "safety.json";

    private readonly IReadOnlyDictionary<CautionKind, CautionRow> _cautions =
        ReferenceText.OneRowEach(File, Cautions, row => row.Caution);

    public CautionRow Of(CautionKind caution) => _cautions[caution];
}
