export declare const API_FOLDER: string;
export declare function apiReports(): Map<string, string>;
export declare function namesIn(reports: ReadonlyMap<string, string>): Map<string, string>;
