using GameNight.Planning.Quantities;

namespace GameNight.Planning.Appetite;

/// <summary>The dough is begun: it holds so many pies, whatever the answers say now.</summary>
/// <param name="Beside">Pies on the second dough, which still follow the answers; null for none.</param>
public sealed record DoughIsBegun(PieCount Pies, PieCount? Beside = null) : Reason;
