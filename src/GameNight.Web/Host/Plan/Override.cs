using GameNight.Nights.Records;

namespace GameNight.Web.Host.Plan;

/// <summary>A number that the host sets by hand, in the unit of what is overruled.</summary>
public sealed record Override(Overridable What, double Value);
