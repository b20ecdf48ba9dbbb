namespace PileController.Benchmarks.Scores;

/// <summary>What each rule captures of what the bound avoids, cell by cell.</summary>
internal static class Capture
{
    /// <summary>Cells with less to win are told, not scored, K·h.</summary>
    public const double LeastScored = 50;

    /// <summary>Share of what the bound avoids; null where there is nothing to win.</summary>
    public static double? Share(double noneK, double boundK, double policyK) =>
        noneK > boundK ? (noneK - policyK) / (noneK - boundK) : null;

    /// <summary>
    /// The least a rule can have captured where no lawful bound stands beside it, against a planner who leaves no cold whatever;
    /// null where one is kept, or where the rule avoids too little for the cell to be surely scored.
    /// </summary>
    public static double? AtLeast(IReadOnlyList<Cell> cells, Cell cell) =>
        LawfulBound(cells, cell) is null && Beside(cells, cell, "none") is { } none
            && none.ColdDegreeHours - cell.ColdDegreeHours >= LeastScored
            ? Share(none.ColdDegreeHours, 0, cell.ColdDegreeHours)
            : null;

    /// <summary>Fills in the shares of the cells that have a lawful bound beside them; the others stay as they are.</summary>
    public static Cell[] Filled(IReadOnlyList<Cell> cells) =>
    [
        .. cells.Select(c =>
        {
            if (LawfulBound(cells, c) is not { } bound || Beside(cells, c, "none") is not { } none)
            {
                return c;
            }

            double? By(Cell? of) => of is null ? null : Share(none.ColdDegreeHours, bound.ColdDegreeHours, of.ColdDegreeHours);
            return c with
            {
                Captured = By(c),
                CapturedByCutout = By(Beside(cells, c, "cutout")),
                Scored = none.ColdDegreeHours - bound.ColdDegreeHours >= LeastScored,
                Certificate = bound.Certificate,
            };
        }),
    ];

    /// <summary>
    /// The bound of a cell; null where none is kept, or where no plan was found that keeps to the floor: a heap that falls
    /// below it with nothing drawn has no best plan to be held against.
    /// </summary>
    public static Cell? LawfulBound(IReadOnlyList<Cell> cells, Cell cell) =>
        Beside(cells, cell, Cell.Bound) is { HoursBelowFloor: <= 0 } bound ? bound : null;

    /// <summary>The cell of another rule on the same rig in the same winter.</summary>
    public static Cell? Beside(IReadOnlyList<Cell> cells, Cell cell, string policy) =>
        cells.FirstOrDefault(o => o.Rig == cell.Rig && o.Weather == cell.Weather && o.Policy == policy);
}
