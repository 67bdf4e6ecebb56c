using GameNight.Planning.Quantities;

namespace GameNight.Planning.Appetite;

/// <summary>The dough is begun: it holds so many pies, whatever the answers say now.</summary>
public sealed record DoughIsBegun(PieCount Pies) : Reason;
