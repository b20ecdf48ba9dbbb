namespace PileController.Control.Readings;

/// <summary>What a probe is there to tell. A rig has at most one probe for each.</summary>
public enum Channel
{
    /// <summary>Heap at its middle, °C.</summary>
    HeapCore = 0,

    /// <summary>Heap half way between middle and turns, °C.</summary>
    HeapMiddle,

    /// <summary>Heap within a few centimetres of the coil turns, °C.</summary>
    HeapTurns,

    /// <summary>Heap near its outer face, °C.</summary>
    HeapEdge,

    /// <summary>Loop water leaving the heap, °C.</summary>
    Supply,

    /// <summary>Loop water coming back to the heap, °C.</summary>
    Return,

    /// <summary>Greenhouse air, °C.</summary>
    House,

    /// <summary>Greenhouse floor or bed, °C.</summary>
    Floor,

    /// <summary>Overflow tank water, °C.</summary>
    Tank,

    /// <summary>Air outside, °C.</summary>
    Outside,

    /// <summary>Air leaving the heap's ducts, °C.</summary>
    DuctAir,

    /// <summary>Sunshine on a level surface, W/m².</summary>
    Sun,

    /// <summary>Loop flow, L/min.</summary>
    Flow,

    /// <summary>Electric power the pump takes, W (the proof that it runs).</summary>
    PumpPower,

    /// <summary>Electric power the blower takes, W.</summary>
    BlowerPower,

    /// <summary>Battery voltage, V.</summary>
    Battery,

    /// <summary>Leak switch: 1 wet, 0 dry.</summary>
    Leak,

    /// <summary>Tank level switch: 1 water at the mark, 0 below it.</summary>
    Level,

    /// <summary>Relative humidity of the greenhouse air, %.</summary>
    Humidity,

    /// <summary>Carbon dioxide in the greenhouse air, ppm by volume.</summary>
    CarbonDioxide,

    /// <summary>A thermometer at a place of the grower's own, °C. No part in control.</summary>
    SpareOne,

    /// <summary>A second one, °C.</summary>
    SpareTwo,

    /// <summary>A third one, °C.</summary>
    SpareThree,

    /// <summary>A fourth one, °C.</summary>
    SpareFour,
}
