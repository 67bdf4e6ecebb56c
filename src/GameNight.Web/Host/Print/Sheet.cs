namespace GameNight.Web.Host.Print;

/// <summary>The sheets of a night, in the order they are printed.</summary>
public enum Sheet
{
    Plan,
    Cards,
    Table,
    Shopping,
    Timeline,
}
