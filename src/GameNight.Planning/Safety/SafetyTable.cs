using GameNight.Planning.Reference;

namespace GameNight.Planning.Safety;

public sealed record CautionRow(CautionKind Caution, string Authority, string Source);

/// <summary>Cautions, each with the authority that it defers to.</summary>
public sealed record SafetyTable(IReadOnlyList<CautionRow> Cautions, ValidRange OvenAirCelsius, ValidRange FridgeCelsius)
{
    internal const string File = "safety.json";

    private readonly IReadOnlyDictionary<CautionKind, CautionRow> _cautions =
        ReferenceText.OneRowEach(File, Cautions, row => row.Caution);

    public CautionRow Of(CautionKind caution) => _cautions[caution];
}
