namespace PileController.Benchmarks.Bounds;

/// <summary>What a plan came to on the true plant.</summary>
/// <param name="ColdDegreeHours">House below its minimum, K·h.</param>
/// <param name="HoursBelowFloor">Active zone below the floor after lighting, h.</param>
/// <param name="UndershootK">How far below, K.</param>
/// <param name="LeastActiveZoneC">Least active zone after lighting, °C.</param>
/// <param name="DrawnKWh">Heat drawn, kWh.</param>
/// <param name="LitOnDay">Day of lighting; null when it never lit.</param>
internal sealed record Outcome(
    double ColdDegreeHours, double HoursBelowFloor, double UndershootK, double LeastActiveZoneC, double DrawnKWh,
    double? LitOnDay);
